#pragma once

#include <groat/cost/offers_in_force.hpp>

#include <groat/base/linkage.hpp>
#include <groat/model/convert.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE bool is_only_compared(Offer const& offer, Book const& book) {
    return offer.is_only_compared ||
           (offer.is_listed() && book.suppliers[offer.supplier].is_only_compared);
}

GROAT_INLINE Money landed_pack_cost(Offer const& offer, Book const& book) {
    return offer.pack_cost(book.suppliers[offer.supplier].delivery_share);
}

GROAT_INLINE Yield yield_of(Offer const& offer, Ingredient const& ingredient) {
    if (offer.yield) return *offer.yield;
    return ingredient.yield.value_or(Yield());
}

GROAT_INLINE Result<Number> content_of(Offer const& offer, Ingredient const& ingredient) {
    return amount_in(offer.pack, ingredient);
}

GROAT_INLINE Result<std::vector<std::size_t>> offers_in_force(Book const& book,
                                                              std::size_t ingredient, Date date) {
    struct Candidate {
        std::size_t supplier;
        Number content;
        bool is_compared; ///< only: what is noted to compare takes no other's place
        std::size_t offer;
    };
    std::vector<Candidate> newest;
    for (std::size_t const index : book.offers_of[ingredient]) {
        Offer const& offer = book.offers[index];
        if (offer.kind == Offer::Kind::stopgap || !offer.has_begun(date)) continue;
        bool const is_compared = is_only_compared(offer, book);
        auto content = content_of(offer, book.ingredients[ingredient]);
        if (!content) return Refused(content.error());
        auto const same = std::find_if(newest.begin(), newest.end(), [&](Candidate const& known) {
            return known.supplier == offer.supplier && known.content == *content &&
                   known.is_compared == is_compared;
        });
        if (same == newest.end())
            newest.push_back({offer.supplier, *content, is_compared, index});
        else if (!(offer.from < book.offers[same->offer].from))
            same->offer = index; // none < any date; of one day a purchase stands behind the list
    }
    std::vector<std::size_t> result;
    for (Candidate const& candidate : newest)
        if (!book.offers[candidate.offer].has_ended(date)) result.push_back(candidate.offer);
    std::sort(result.begin(), result.end());
    return result;
}

} // namespace groat
