/// What each supplier's offer of a thing really costs: per usable unit, not per sack, and delivered.
#pragma once

#include <groat/cost/unit_cost.hpp>
#include <groat/measure/coins.hpp>

#include <algorithm>
#include <optional>
#include <vector>

namespace groat {

/// What was last paid per unit as purchased, net, without freight, delivery and deposit.
struct LastPaid {
    Date on;
    Money price;
};

/// One offer in force, beside the best. Units are grams of food and pieces of a supply; money is net of
/// recoverable tax.
struct ComparedOffer {
    std::size_t offer = 0;
    Number content;  ///< of a pack, as purchased
    Money price;     ///< per unit as purchased, as listed or paid
    Money freight;   ///< per unit as purchased: freight, and the share for delivery
    Money unit_cost; ///< both: the AP cost, landed; without the deposit
    Yield yield;
    Money usable;                 ///< unit cost / yield
    Number dearer;                ///< than the best, as a share of it: 0 for the best
    Money extra;                  ///< for the amount wanted, against the best, by usable cost
    std::optional<Money> listed;  ///< per unit as purchased, of that supplier's list for that pack
    std::optional<LastPaid> paid; ///< to that supplier for that pack; absent where nothing was
    std::optional<Days> age;      ///< since the price is in force
    bool is_stale = false;
    /// The yield at which it would draw level with the best usable cost: `unit cost / best usable cost`.
    /// Above 100 % where no trim at all would make up for its price.
    Number break_even_yield;
    Integer packs;  ///< whole packs for the amount wanted
    Money goods;    ///< those packs, at the price break they reach, with freight and deposit
    Money delivery; ///< the supplier's charge for a delivery of just these
    bool is_above_most = false;    ///< more packs than may be had at once
    bool is_below_minimum = false; ///< these packs alone do not make the supplier's minimum order
    /// What the amount costs at the door if nothing else is ordered.
    [[nodiscard]] Money landed() const { return goods + delivery; }
    /// What was paid against what is listed, as a share of that; absent where one of them is, or nothing is asked.
    [[nodiscard]] std::optional<Number> paid_against_listed() const {
        if (!paid || !listed || listed->is_zero()) return std::nullopt;
        return paid->price / *listed - 1;
    }
};

struct Comparison {
    std::size_t ingredient = 0;
    std::optional<Number> wanted; ///< usable units
    std::vector<ComparedOffer>
        offers; ///< the cheapest per usable unit first; of equals in reading order
};

/// All offers of an ingredient in force on `date`, ranked. `wanted` is a usable amount; without one the
/// landed costs are those of one pack.
/// Fails    when a pack cannot be turned into the ingredient's unit, or nothing is in force
/// Example  50 lb at 21.50 of yield 100 % and 25 lb at 11.00  ->  the second is 2.3 % dearer
[[nodiscard]] Result<Comparison> compare_offers(Book const& book, std::size_t ingredient, Date date,
                                                std::optional<Number> const& wanted);

/// The listed price of a pack when so many are bought: that of the highest price break reached.
[[nodiscard]] Money pack_price(Offer const& offer, Integer const& packs);

/// The last offer by `date` of the same supplier and pack as `offer`, of lists or of purchases; null where there is
/// none, or the list's has ended.
[[nodiscard]] Offer const* last_offer(Book const& book, Offer const& offer, Offer::Kind kind,
                                      Date date);

/// A price of the past or the present, for a history: listed or paid, as its offer says.
struct PastPrice {
    std::size_t offer = 0;
    std::optional<Date> from;
    Money usable; ///< per usable unit
};

/// Every offer of an ingredient in time and what was paid for it, stopgaps as well; the oldest first, of a day the
/// lists before the purchases.
/// Fails    when a pack cannot be turned into the ingredient's unit
[[nodiscard]] Result<std::vector<PastPrice>> price_history(Book const& book,
                                                           std::size_t ingredient);

// ---------------------------------------------------------------------------------------------------

inline Money pack_price(Offer const& offer, Integer const& packs) {
    Money price = offer.price;
    Number reached;
    for (PriceBreak const& each : offer.breaks) {
        if (each.packs > packs || each.packs < reached) continue;
        reached = each.packs;
        price = each.price;
    }
    return price;
}

inline Offer const* last_offer(Book const& book, Offer const& offer, Offer::Kind kind, Date date) {
    Ingredient const& ingredient = book.ingredients[offer.item.index];
    auto const content = content_of(offer, ingredient);
    if (!content) return nullptr;
    auto const is_that_pack = [&](Offer const& other) {
        auto const own = content_of(other, ingredient);
        return own && *own == *content;
    };
    Offer const* last = nullptr;
    for (std::size_t const index : book.offers_of[offer.item.index]) {
        Offer const& other = book.offers[index];
        if (other.kind != kind || other.supplier != offer.supplier || !other.has_begun(date) ||
            !is_that_pack(other))
            continue;
        if (last == nullptr || !(other.from < last->from)) last = &other;
    }
    return last == nullptr || last->has_ended(date) ? nullptr : last;
}

inline Result<Comparison> compare_offers(Book const& book, std::size_t ingredient, Date date,
                                         std::optional<Number> const& wanted) {
    auto const in_force = offers_in_force(book, ingredient, date);
    if (!in_force) return Refused(in_force.error());
    if (in_force->empty()) return Refused(unit_cost_detail::no_price(book, ingredient, date));
    Comparison result{ingredient, wanted, {}};
    for (std::size_t const index : *in_force) {
        Offer const& offer = book.offers[index];
        Supplier const& supplier = book.suppliers[offer.supplier];
        Number const untaxed = 1 + offer.tax_included.value();
        ComparedOffer entry;
        entry.offer = index;
        entry.content = *content_of(offer, book.ingredients[ingredient]);
        entry.yield = yield_of(offer, book.ingredients[ingredient]);
        entry.unit_cost = landed_pack_cost(offer, book) / entry.content;
        entry.price = offer.price / untaxed / entry.content;
        entry.freight = entry.unit_cost - entry.price;
        entry.usable = entry.unit_cost / entry.yield.value();
        if (Offer const* const listed = last_offer(book, offer, Offer::Kind::listed, date))
            entry.listed = listed->untaxed(listed->price) / entry.content;
        if (Offer const* const paid = last_offer(book, offer, Offer::Kind::paid, date))
            entry.paid = {*paid->from, paid->untaxed(paid->price) / entry.content};
        if (offer.from) entry.age = date - *offer.from;
        entry.is_stale = entry.age && book.shop.stale_after && *entry.age > *book.shop.stale_after;
        entry.packs = wanted ? ceiling(*wanted / entry.yield.value() / entry.content).numerator()
                             : Integer(1);
        Money const goods = pack_price(offer, entry.packs) * Number(entry.packs);
        entry.goods = (goods + (offer.freight + offer.deposit) * Number(entry.packs)) / untaxed;
        entry.delivery = supplier.delivery_of(goods);
        entry.is_above_most = offer.most_packs && entry.packs > *offer.most_packs;
        entry.is_below_minimum = supplier.minimum_order && goods < *supplier.minimum_order;
        result.offers.push_back(std::move(entry));
    }
    std::stable_sort(
        result.offers.begin(), result.offers.end(),
        [](ComparedOffer const& a, ComparedOffer const& b) { return a.usable < b.usable; });
    Money const best = result.offers.front().usable;
    for (ComparedOffer& entry : result.offers) {
        entry.extra = (entry.usable - best) * wanted.value_or(Number());
        if (best.is_zero()) continue;
        entry.dearer = entry.usable / best - 1;
        entry.break_even_yield = entry.unit_cost / best;
    }
    return result;
}

inline Result<std::vector<PastPrice>> price_history(Book const& book, std::size_t ingredient) {
    std::vector<PastPrice> history;
    for (std::size_t const index : book.offers_of[ingredient]) {
        Offer const& offer = book.offers[index];
        auto const content = content_of(offer, book.ingredients[ingredient]);
        if (!content) return Refused(content.error());
        Yield const yield = yield_of(offer, book.ingredients[ingredient]);
        history.push_back(
            {index, offer.from, landed_pack_cost(offer, book) / *content / yield.value()});
    }
    std::stable_sort(history.begin(), history.end(),
                     [](PastPrice const& a, PastPrice const& b) { return a.from < b.from; });
    return history;
}

} // namespace groat
