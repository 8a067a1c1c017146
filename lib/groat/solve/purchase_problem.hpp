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

// ---------------------------------------------------------------------------------------------------

inline void check_problem(PurchaseProblem const& problem) {
    auto const demand = [](bool holds, char const* what) {
        if (!holds) throw std::logic_error(what);
    };
    auto const check_price = [&](PackPrice const& price) {
        demand(!price.cost.is_negative() && !price.counted.is_negative(),
               "a pack with a negative price");
    };
    for (Number const& each : problem.demands) demand(!each.is_negative(), "a negative demand");
    demand(problem.uses.empty() || problem.uses.size() == problem.demands.size(),
           "uses of what is left over that do not match the items");
    for (LeftoverUse const& use : problem.uses)
        demand(!use.useful.is_negative() && !use.worth.is_negative(), "a negative use or worth");
    for (PurchaseSupplier const& supplier : problem.suppliers)
        demand(!supplier.delivery.is_negative() && !supplier.minimum.is_negative(),
               "a supplier with a negative delivery or minimum");
    for (PurchaseSupplier const& supplier : problem.suppliers)
        demand(!supplier.free_from || !supplier.free_from->is_negative(),
               "a supplier who delivers free from a negative order");
    for (PurchaseOffer const& offer : problem.offers) {
        demand(offer.supplier < problem.suppliers.size(), "an offer of an unknown supplier");
        demand(offer.item < problem.demands.size(), "an offer of an unknown item");
        demand(offer.content.is_positive(), "a pack without content");
        demand(!offer.most_packs || offer.most_packs->sign() >= 0, "a negative limit of packs");
        check_price(offer.price);
        Integer last = 1;
        for (PackBreak const& each : offer.breaks) {
            demand(each.packs > last, "price breaks that do not rise");
            check_price(each.price);
            last = each.packs;
        }
    }
}

} // namespace groat
