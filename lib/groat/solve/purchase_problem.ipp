#pragma once

#include <groat/solve/purchase_problem.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE void check_problem(PurchaseProblem const& problem) {
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
