#pragma once

#include <groat/price/minimum_order.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/price/pricing.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE std::optional<SmallestOrder> smallest_order(Costing const& costing) {
    std::optional<SmallestOrder> least;
    Book const& book = costing.book();
    for (std::size_t i = 0; i < book.formulas.size(); ++i) {
        for (SaleUnit const& unit : book.formulas[i].sold_as) {
            if (costing.findings(i, &unit).has_errors()) continue;
            CostRequest request{{Sale{i, &unit, 1}}};
            request.divides_losses = false;
            Money cost = costing.cost(request).all();
            if (!least || cost < least->cost)
                least = SmallestOrder{i, &unit, std::move(cost), Kept(costing.linked())};
        }
    }
    return least;
}

GROAT_INLINE Diagnostics minimum_order_findings(Costing const& costing) {
    Diagnostics found;
    Shop const& shop = costing.book().shop;
    if (!shop.minimum_order) return found;
    auto const least = smallest_order(costing);
    if (!least) return found;
    Money const minimum = *shop.minimum_order;
    Money const net = shop.tax.is_contained ? without_tax(minimum, shop.tax.rate) : minimum;
    FeeTerms fee;
    if (shop.paid_by.is_resolved())
        fee = {shop.fees[shop.paid_by.index].share, shop.fees[shop.paid_by.index].fixed};
    Money const cost = least->cost + fee_on(with_tax(net, shop.tax.rate), fee);
    if (net >= cost) return found;
    auto const shown = [&](Money const& money) {
        return decimal(money.amount(), shop.currency.minor_digits());
    };
    found.warn(shop.minimum_order_origin, "minimum-below-cost",
               fmt::format("an order of {}{} does not pay for the smallest one: a single '{}, {}' "
                           "costs {} with order work and payment",
                           shown(net), shop.tax.is_contained ? " without tax" : "",
                           costing.book().formulas[least->formula].name, least->unit->name,
                           shown(cost)),
               "raise the minimum order");
    return found;
}

} // namespace groat
