/// Buying for orders: what they take, less what is on the shelf, in whole packs at the least outlay, and what
/// becomes of the rest. The optimum itself is purchase.hpp's; here the books' names, packs, terms and shelf
/// lives are put to it, and its answer is put into the trade's words.
#pragma once

#include <groat/plan/basket.hpp>
#include <groat/plan/needs.hpp>
#include <groat/solve/purchase.hpp>

#include <optional>
#include <vector>

namespace groat {

/// Another way of buying the same, to compare with.
struct OtherWay {
    Money total;
    bool misses_minimum =
        false; ///< a supplier's minimum order is not reached, so that it may be refused
};

/// What is left over of one need by a purchase, and what of that will be used.
struct Leftover {
    std::size_t need = 0; ///< index in the needs
    Number left;
    Number used;
    Money worth; ///< of what will be used, at the unit cost that costs go by
};

/// The purchase with the least outlay less the worth of what will be used of its leftovers.
struct BuyingAhead {
    std::vector<Basket> baskets;
    std::vector<Leftover> left; ///< of each need of which something is bought
    Money total;                ///< of all baskets
    Money worth;                ///< of what is left over
    Money bound;                ///< no purchase has a lower net
    Money least_worth; ///< what the leftovers of the least outlay are worth in the same way

    [[nodiscard]] Money net() const { return total - worth; }
    [[nodiscard]] bool is_least() const { return net() == bound; }
};

struct Buying {
    Date date; ///< prices are those in force on this day
    std::vector<Order const*> orders;
    std::vector<Need> needs;           ///< in the order of the book, without what is metered
    std::vector<Basket> baskets;       ///< by supplier, in the order of the book
    Money total;                       ///< of all baskets
    Money bound;                       ///< no purchase costs less
    OtherWay by_unit_price;            ///< each thing at the offer that quotes go by
    std::optional<std::size_t> single; ///< the cheapest supplier who has everything
    Money single_total;
    std::optional<BuyingAhead> ahead;       ///< where any leftover could be used
    std::vector<std::size_t> closest_lacks; ///< where there is none: what the closest one lacks,
    std::optional<std::size_t> closest;     ///< and who that is
    Kept kept = {};                         ///< the orders

    [[nodiscard]] bool is_least() const { return total == bound; }
    /// By how much another purchase could cost less at most.
    [[nodiscard]] Money most_to_save() const { return total - bound; }
    [[nodiscard]] Money dearer_by(Money const& other) const { return other - total; }
    /// What is spent on packs beyond need, and whether that is more than half of it all.
    [[nodiscard]] Money worth_left() const;
    [[nodiscard]] bool is_mostly_left() const { return worth_left() * 2 > total; }
    /// The outlay less what its leftovers will be used for, beside that of buying ahead.
    [[nodiscard]] Money net() const { return total - ahead->least_worth; }
};

/// The cheapest purchase for some orders together, batches and mixes shared.
///
///     to buy = max(0, needed as purchased - fit stock)
///     minimise  sum of packs * (price at so many packs + freight + deposit) + delivery of who is used
///     such that each `to buy` is covered, each used supplier's minimum and each offer's most packs kept
///
/// Beside it stands the purchase that is least after the worth of what its leftovers will be used for:
///
///     net = outlay - sum of unit cost * min(left over, useful)
///
/// where `useful` is `Need::useful` and the unit cost that which costs go by, not that of the pack bought.
///
/// Net of recoverable tax; exact. Where an ingredient names a preferred supplier, only theirs is bought. An
/// offer with another yield than the need was costed at counts by its usable content; where part of the
/// need was written as bought, never for more than its content.
/// Fails    with every finding that stands in the way: formulas that cannot be costed, limits of packs or
///          minimums that leave something short. `found` also receives warnings: stock past its day, stale
///          prices
/// Example  7 kg of flour; 5 lb 4.29, 25 lb 14.99, 4 lb 3.79  ->  1 pack of 25 lb, 14.99, 4.340 kg left over
[[nodiscard]] std::optional<Buying> buy(Costing const& costing,
                                        std::vector<Order const*> const& orders, Diagnostics& found,
                                        std::uint64_t work = usual_purchase_work);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/buying.ipp>
#endif
