/// Which offers of a thing hold on a day, of the lists and of what was paid, and what one of them contains.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/model/book.hpp>
#include <groat/model/convert.hpp>

#include <algorithm>
#include <optional>
#include <vector>

namespace groat {

/// The offers in force on `date`: of each supplier and pack size the newest that has begun and not ended, of
/// list and purchase alike; of one day the purchase. Indices into the book's offers, in their order.
[[nodiscard]] Result<std::vector<std::size_t>> offers_in_force(Book const& book,
                                                               std::size_t ingredient, Date date);

/// The amount in one pack: grams of food, pieces of a supply, as purchased.
/// Fails    where a density or unit weight is missing
[[nodiscard]] Result<Number> content_of(Offer const& offer, Ingredient const& ingredient);

/// The offer's own yield, else the ingredient's, else 100 %.
[[nodiscard]] Yield yield_of(Offer const& offer, Ingredient const& ingredient);

/// Whether an offer is there to compare with and never in a cost. What was really paid is, wherever it was.
[[nodiscard]] inline bool is_only_compared(Offer const& offer, Book const& book) {
    return offer.is_only_compared ||
           (offer.is_listed() && book.suppliers[offer.supplier].is_only_compared);
}

/// What a pack costs at the door: its price with the supplier's share for delivery, and freight.
///
///     (price * (1 + delivery / usual order) + freight) / (1 + tax)
///
/// Net of recoverable tax; exact; without the deposit.
/// Example  13.80 with 7.50 of delivery on a usual order of 120.00  ->  14.6625
[[nodiscard]] inline Money landed_pack_cost(Offer const& offer, Book const& book) {
    return offer.pack_cost(book.suppliers[offer.supplier].delivery_share);
}

// ---------------------------------------------------------------------------------------------------

inline Yield yield_of(Offer const& offer, Ingredient const& ingredient) {
    if (offer.yield) return *offer.yield;
    return ingredient.yield.value_or(Yield());
}

inline Result<Number> content_of(Offer const& offer, Ingredient const& ingredient) {
    return amount_in(offer.pack, ingredient);
}

inline Result<std::vector<std::size_t>> offers_in_force(Book const& book, std::size_t ingredient,
                                                        Date date) {
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
