/// What is to be bought and who offers it: the problem that purchase.hpp solves, in plain figures that know
/// nothing of books, names or dates. Amounts of money are exact numbers of one currency, net of recoverable
/// tax; quantities of an item are exact numbers of one unit of that item, as purchased.
#pragma once

#include <groat/base/number.hpp>

#include <optional>
#include <vector>

namespace groat {

/// What one pack costs, and what of it counts towards the supplier's minimum order: the goods at their
/// listed price, without freight or deposit.
struct PackPrice {
    Number cost;
    Number counted;
};

/// From `packs` packs of an offer on, every pack of it has this price; it need not be a lower one.
struct PackBreak {
    Integer packs;
    PackPrice price;
};

struct PurchaseOffer {
    std::size_t supplier = 0;
    std::size_t item = 0;
    Number content; ///< of one pack, above 0
    PackPrice price;
    std::vector<PackBreak> breaks = {}; ///< by rising packs, each above 1
    std::optional<Integer> most_packs = {};

    [[nodiscard]] PackPrice const& price_at(Integer const& packs) const {
        PackPrice const* at = &price;
        for (PackBreak const& each : breaks)
            if (each.packs <= packs) at = &each.price;
        return *at;
    }
};

/// A supplier from whom anything is bought is paid `delivery` once and must be given an order whose counted
/// prices reach `minimum`; where they reach `free_from`, nothing is paid for delivery.
struct PurchaseSupplier {
    Number delivery = {};
    Number minimum = {};
    std::optional<Number> free_from = {};

    [[nodiscard]] Number delivery_of(Number const& counted) const {
        return free_from && counted >= *free_from ? Number() : delivery;
    }
};

/// So much of an item beyond its demand will be used, and saves `worth` a unit then; the rest of what is left
/// over is worth nothing.
struct LeftoverUse {
    Number useful;
    Number worth;
};

struct PurchaseProblem {
    std::vector<Number> demands; ///< of each item, 0 or above
    std::vector<PurchaseSupplier> suppliers;
    std::vector<PurchaseOffer> offers;
    std::vector<LeftoverUse> uses =
        {}; ///< by item; empty: nothing that is left over is worth anything

    [[nodiscard]] LeftoverUse use(std::size_t item) const {
        return uses.empty() ? LeftoverUse() : uses[item];
    }
};

/// Throws `std::logic_error` where a figure or an index is none that a problem can have. Readers refuse
/// such figures where they stand, so here it is misuse.
void check_problem(PurchaseProblem const& problem);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/solve/purchase_problem.ipp>
#endif
