/// What everything costs per gram or piece on a date: for each ingredient and supply the offer it is
/// bought by, chosen once for the whole book.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/model/book.hpp>
#include <groat/model/convert.hpp>

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

/// The offer that an ingredient or supply is bought by.
struct Purchase {
    enum class Reason { only, cheapest, preferred };

    std::size_t offer = 0; ///< index in the book
    Money pack_cost;       ///< net of recoverable tax, with freight and deposit
    Number content;        ///< grams, or pieces of a supply, in one pack, as purchased (AP)
    Yield yield;           ///< the offer's, else the ingredient's, else 1
    Money unit_cost;       ///< AP cost per gram or piece: `pack_cost / content`
    Reason reason = Reason::only;
    std::size_t considered = 1; ///< offers in force that it was chosen from

    /// What a usable gram or piece costs: AP cost over yield (the trade's cost factor is `1 / yield`).
    [[nodiscard]] Money usable_cost() const { return unit_cost / yield.value(); }
};

/// For each ingredient of the book its purchase on a date, or why there is none.
struct UnitCosts {
    Date date;
    std::vector<std::optional<Purchase>> purchases; ///< by ingredient
    std::vector<Flaw> problems;                     ///< by ingredient; empty code: none
};

/// The offers in force on `date`: of each supplier and pack size the newest that has begun and not ended.
/// Indices into the book's offers, in reading order.
[[nodiscard]] Result<std::vector<std::size_t>> offers_in_force(Book const& book,
                                                               std::size_t ingredient, Date date);

/// The amount in one pack: grams of food, pieces of a supply, as purchased.
/// Fails    where a density or unit weight is missing
[[nodiscard]] Result<Number> content_of(Offer const& offer, Ingredient const& ingredient);

/// The offer's own yield, else the ingredient's, else 100 %.
[[nodiscard]] Yield yield_of(Offer const& offer, Ingredient const& ingredient);

/// Chooses for every ingredient the preferred supplier's offer, else the cheapest per usable unit among
/// those in force; of equals the first in reading order. Single packs are reckoned with: price breaks
/// belong to buying.
[[nodiscard]] UnitCosts unit_costs(Book const& book, Date date);

// ---------------------------------------------------------------------------------------------------

inline Yield yield_of(Offer const& offer, Ingredient const& ingredient) {
    if (offer.yield) return *offer.yield;
    return ingredient.yield.value_or(Yield());
}

inline Result<Number> content_of(Offer const& offer, Ingredient const& ingredient) {
    return ingredient.is_supply() ? pieces_of(offer.pack, ingredient)
                                  : grams_of(offer.pack, ingredient);
}

inline Result<std::vector<std::size_t>> offers_in_force(Book const& book, std::size_t ingredient,
                                                        Date date) {
    struct Candidate {
        std::size_t supplier;
        Number content;
        std::size_t offer;
    };
    std::vector<Candidate> newest;
    for (std::size_t const index : book.offers_of[ingredient]) {
        Offer const& offer = book.offers[index];
        if (!offer.has_begun(date)) continue;
        auto content = content_of(offer, book.ingredients[ingredient]);
        if (!content) return Refused(content.error());
        auto const same = std::find_if(newest.begin(), newest.end(), [&](Candidate const& known) {
            return known.supplier == offer.supplier && known.content == *content;
        });
        if (same == newest.end())
            newest.push_back({offer.supplier, *content, index});
        else if (!(offer.from < book.offers[same->offer].from))
            same->offer = index; // none < any date
    }
    std::vector<std::size_t> result;
    for (Candidate const& candidate : newest)
        if (!book.offers[candidate.offer].has_ended(date)) result.push_back(candidate.offer);
    std::sort(result.begin(), result.end());
    return result;
}

namespace unit_cost_choice {

inline Flaw no_price(Book const& book, std::size_t index, Date date) {
    Ingredient const& ingredient = book.ingredients[index];
    std::optional<Date> first;
    std::optional<Date> last;
    for (std::size_t const offer : book.offers_of[index]) {
        auto const& from = book.offers[offer].from;
        auto const& until = book.offers[offer].until;
        if (from && *from > date && (!first || *from < *first)) first = from;
        if (until && *until < date && (!last || *until > *last)) last = until;
    }
    if (first)
        return {"future-price",
                fmt::format("'{}' has no price on {}: its next one is in force from {}",
                            ingredient.name, iso_date(date), iso_date(*first)),
                fmt::format("add the offer that held on {}, or cost on a later day with --on {}",
                            iso_date(date), iso_date(*first))};
    if (last)
        return {"ended-price",
                fmt::format("'{}' has no price on {}: its last one ended on {}", ingredient.name,
                            iso_date(date), iso_date(*last)),
                fmt::format(
                    "add what it costs now to a price list: '- {{item: {}, pack: ..., price: ..., "
                    "from: {}}}'",
                    ingredient.name, iso_date(date))};
    return {
        "missing-price", fmt::format("'{}' has no price in any price list", ingredient.name),
        fmt::format("add an offer to a file in prices/: '- {{item: {}, pack: ..., price: ...}}'",
                    ingredient.name)};
}

inline Result<Purchase> choose(Book const& book, std::size_t index, Date date) {
    Ingredient const& ingredient = book.ingredients[index];
    auto in_force = offers_in_force(book, index, date);
    if (!in_force) return Refused(in_force.error());
    if (in_force->empty()) return Refused(no_price(book, index, date));
    bool const has_preference = ingredient.preferred_supplier.is_resolved();
    std::optional<Purchase> best;
    for (std::size_t const each : *in_force) {
        Offer const& offer = book.offers[each];
        if (has_preference && offer.supplier != ingredient.preferred_supplier.index) continue;
        Purchase purchase;
        purchase.offer = each;
        purchase.pack_cost = offer.pack_cost();
        purchase.content = *content_of(offer, ingredient);
        purchase.yield = yield_of(offer, ingredient);
        purchase.unit_cost = purchase.pack_cost / purchase.content;
        if (!best || purchase.usable_cost() < best->usable_cost()) best = std::move(purchase);
    }
    if (!best)
        return refuse("missing-price",
                      fmt::format("'{}' is to be bought from {}, who has no price in force on {}",
                                  ingredient.name, ingredient.preferred_supplier.name,
                                  iso_date(date)),
                      "add their offer to a price list, or take 'prefer' out of ingredients.yaml");
    best->considered = in_force->size();
    best->reason = has_preference          ? Purchase::Reason::preferred
                   : in_force->size() == 1 ? Purchase::Reason::only
                                           : Purchase::Reason::cheapest;
    return *best;
}

} // namespace unit_cost_choice

inline UnitCosts unit_costs(Book const& book, Date date) {
    UnitCosts result{date, {}, {}};
    result.purchases.resize(book.ingredients.size());
    result.problems.resize(book.ingredients.size());
    for (std::size_t i = 0; i < book.ingredients.size(); ++i) {
        auto purchase = unit_cost_choice::choose(book, i, date);
        if (purchase)
            result.purchases[i] = std::move(*purchase);
        else
            result.problems[i] = std::move(purchase.error());
    }
    return result;
}

} // namespace groat
