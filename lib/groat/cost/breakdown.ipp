#pragma once

#include <groat/cost/breakdown.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE Money OrderCost::left_over() const {
    Money sum;
    for (FormulaUse const& use : formulas) sum += use.left_over();
    return sum;
}

GROAT_INLINE std::array<Number, 4> YieldLoss::shares() const {
    std::array<Number, 4> result;
    Money const whole = total();
    if (whole.is_zero()) return result;
    std::array<Money, 4> const all = parts();
    for (std::size_t i = 0; i < all.size(); ++i) result[i] = all[i] / whole;
    return result;
}

GROAT_INLINE Number OrderCost::paid_minutes() const {
    Number sum;
    for (TaskUse const& use : tasks) sum += use.paid_minutes();
    return sum;
}

GROAT_INLINE Money CostByCategory::total() const {
    Money sum;
    for (Money const& amount : amounts) sum += amount;
    return sum;
}

GROAT_INLINE Money CostByCategory::variable(Shop const& shop) const {
    Money sum = variable_overhead;
    for (std::size_t i = 0; i < category_count; ++i)
        if (shop.is_variable[i] && i != static_cast<std::size_t>(Category::overhead))
            sum += amounts[i];
    return sum;
}

GROAT_INLINE CostByCategory& CostByCategory::operator+=(CostByCategory const& other) {
    for (std::size_t i = 0; i < category_count; ++i) amounts[i] += other.amounts[i];
    variable_overhead += other.variable_overhead;
    return *this;
}

} // namespace groat
