#pragma once

#include <groat/cost/unit_cost.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/by_products.hpp>
#include <groat/cost/offers_in_force.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace groat {

namespace unit_cost_detail {

GROAT_INLINE Flaw no_price(Book const& book, std::size_t index, Date date) {
    Ingredient const& ingredient = book.ingredients[index];
    std::optional<Date> first;
    std::optional<Date> last;
    for (std::size_t const offer : book.offers_of[index]) {
        if (book.offers[offer].kind == Offer::Kind::stopgap) continue;
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

inline Flaw nothing_to_go_by(Book const& book, std::size_t index,
                             std::vector<std::size_t> const& in_force) {
    Offer const& offer = book.offers[in_force.front()];
    return {"only-compared",
            fmt::format("'{}' is offered by {}{}, but only to compare: nothing says what it costs",
                        book.ingredients[index].name, book.suppliers[offer.supplier].name,
                        in_force.size() > 1 ? " and others" : ""),
            "note what was paid for it in purchases/, add a price of whom you buy it from, or take "
            "'only compared' away"};
}

inline Purchase purchase_by(Book const& book, std::size_t index, std::size_t offer) {
    Offer const& bought = book.offers[offer];
    Ingredient const& ingredient = book.ingredients[index];
    Purchase purchase;
    purchase.offer = offer;
    purchase.pack_cost = landed_pack_cost(bought, book);
    purchase.pack_outlay = bought.pack_outlay();
    purchase.content = *content_of(bought, ingredient);
    purchase.yield = yield_of(bought, ingredient);
    purchase.unit_cost = purchase.pack_cost / purchase.content;
    purchase.by_product = std::min(by_product_worth(book, index, bought), purchase.unit_cost);
    purchase.unit_cost -= purchase.by_product;
    return purchase;
}

/// The cheapest per usable unit of the offers, or of those of one supplier; the first of equals.
inline std::optional<Purchase> cheapest(Book const& book, std::size_t index,
                                        std::vector<std::size_t> const& offers,
                                        std::size_t supplier = unresolved) {
    std::optional<Purchase> best;
    for (std::size_t const each : offers) {
        if (supplier != unresolved && book.offers[each].supplier != supplier) continue;
        Purchase purchase = purchase_by(book, index, each);
        if (!best || purchase.usable_cost() < best->usable_cost()) best = std::move(purchase);
    }
    return best;
}

/// The pack of a supplier whose content is nearest to `content`; the first of equals.
inline std::optional<Purchase> nearest(Book const& book, std::size_t index,
                                       std::vector<std::size_t> const& offers, std::size_t supplier,
                                       Number const& content) {
    std::optional<Purchase> best;
    auto const distance = [&](Purchase const& purchase) {
        Number const off = purchase.content - content;
        return off.is_negative() ? -off : off;
    };
    for (std::size_t const each : offers) {
        if (book.offers[each].supplier != supplier) continue;
        Purchase purchase = purchase_by(book, index, each);
        if (!best || distance(purchase) < distance(*best)) best = std::move(purchase);
    }
    return best;
}

/// By whom it was last bought from, who has an offer among `offers`.
inline std::optional<Purchase> as_last_bought(Book const& book, std::size_t index,
                                              std::vector<std::size_t> const& offers, Date date) {
    auto const& all = book.offers_of[index];
    for (auto each = all.rbegin(); each != all.rend(); ++each) {
        Offer const& paid = book.offers[*each];
        if (paid.kind != Offer::Kind::paid || !paid.has_begun(date)) continue;
        Number const content = *content_of(paid, book.ingredients[index]);
        auto purchase = nearest(book, index, offers, paid.supplier, content);
        if (!purchase) continue;
        purchase->last_bought = *each;
        purchase->reason = purchase->content == content ? Purchase::Reason::last_bought
                                                        : Purchase::Reason::nearest_pack;
        return purchase;
    }
    return std::nullopt;
}

GROAT_INLINE Result<Purchase> choose(Book const& book, std::size_t index, Date date) {
    using Reason = Purchase::Reason;
    Ingredient const& ingredient = book.ingredients[index];
    if (ingredient.held_offer) {
        Purchase held = purchase_by(book, index, *ingredient.held_offer);
        held.reason = Reason::held;
        return held;
    }
    auto const in_force = offers_in_force(book, index, date);
    if (!in_force) return Refused(in_force.error());
    if (in_force->empty()) return Refused(no_price(book, index, date));
    std::vector<std::size_t> offers = *in_force;
    std::erase_if(offers,
                  [&](std::size_t each) { return is_only_compared(book.offers[each], book); });
    if (offers.empty()) return Refused(nothing_to_go_by(book, index, *in_force));
    std::optional<Purchase> best;
    Reference const& preferred = ingredient.preferred_supplier;
    if (preferred.is_resolved()) best = cheapest(book, index, offers, preferred.index);
    bool const is_instead = preferred.is_resolved() && !best;
    if (best) best->reason = Reason::preferred;
    if (!best) best = as_last_bought(book, index, offers, date);
    if (!best) {
        best = cheapest(book, index, offers);
        best->reason = offers.size() == 1 ? Reason::only : Reason::cheapest;
    }
    best->considered = offers.size();
    best->is_instead = is_instead;
    return *std::move(best);
}

} // namespace unit_cost_detail

GROAT_INLINE UnitCosts unit_costs(Book const& book, Date date) {
    UnitCosts result{date, {}, {}};
    result.purchases.resize(book.ingredients.size());
    result.problems.resize(book.ingredients.size());
    for (std::size_t i = 0; i < book.ingredients.size(); ++i) {
        auto purchase = unit_cost_detail::choose(book, i, date);
        if (purchase)
            result.purchases[i] = std::make_shared<Purchase const>(std::move(*purchase));
        else
            result.problems[i] = std::move(purchase.error());
    }
    return result;
}

GROAT_INLINE Flaw instead_of_preferred(Purchase const& purchase, std::size_t index,
                                       Book const& book, Date date) {
    Ingredient const& ingredient = book.ingredients[index];
    Supplier const& preferred = book.suppliers[ingredient.preferred_supplier.index];
    Offer const& offer = book.offers[purchase.offer];
    std::string const why = preferred.is_only_compared
                                ? std::string("whose prices are only compared")
                                : fmt::format("who has no price in force on {}", iso_date(date));
    return {"preferred-not-in-force",
            fmt::format("'{}' is to be bought from {}, {}: its cost goes by {}, {}",
                        ingredient.name, preferred.name, why, book.suppliers[offer.supplier].name,
                        offer.pack_text),
            preferred.is_only_compared
                ? "take 'only compared' out of the terms of their list, or 'prefer' out of here"
                : "add their offer to a price list, or what was paid to purchases/, or take "
                  "'prefer' out"};
}

} // namespace groat
