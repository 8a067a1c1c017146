/// What each supplier's offer of a thing really costs: per usable unit, not per sack, and delivered.
#pragma once

#include <groat/model/book.hpp>

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

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/compare.ipp>
#endif
