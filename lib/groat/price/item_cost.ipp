#pragma once

#include <groat/price/item_cost.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE SaleUnit const& a_kilogram() {
    static SaleUnit const unit{"kilogram", {1000, Dimension::mass, nullptr}, {}, {}, {}, {}};
    return unit;
}

GROAT_INLINE std::optional<ItemCost> cost_item(Costing const& costing, std::size_t index,
                                               SaleUnit const* unit, Diagnostics& found) {
    quoting_detail::ItemPricer pricer(costing, found);
    auto result = pricer.item(index, unit);
    if (result) pricer.warn_of_loss(result->line, costing.book().formulas[index].origin);
    return result;
}

} // namespace groat
