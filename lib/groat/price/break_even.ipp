#pragma once

#include <groat/price/break_even.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

namespace groat {

GROAT_INLINE std::optional<Number> UnitSale::ratio() const {
    if (sales.is_zero()) return std::nullopt;
    return contribution / sales;
}

GROAT_INLINE UnitSale composite(std::vector<std::pair<Number, UnitSale>> const& parts) {
    UnitSale sum;
    for (auto const& [units, each] : parts) {
        sum.contribution += each.contribution * units;
        sum.sales += each.sales * units;
    }
    return sum;
}

GROAT_INLINE Result<Money> before_tax(Money const& profit, Share const& tax) {
    if (tax.rest().is_zero())
        return refuse("target-out-of-reach", "a tax of 100 % leaves nothing of any profit",
                      "write the part of a profit that is taken, such as 20 %");
    return profit / tax.rest();
}

GROAT_INLINE std::optional<Number> margin_of_safety(Money const& sales, BreakEven const& even) {
    if (sales.is_zero()) return std::nullopt;
    return (sales - even.sales) / sales;
}

GROAT_INLINE Result<BreakEven> break_even(Money const& fixed_costs, UnitSale const& each,
                                          Money const& profit) {
    if (!each.contribution.amount().is_positive())
        return refuse("no-break-even",
                      "a sale leaves nothing over its variable cost, so no number of sales is "
                      "enough",
                      "raise prices or lower what it costs");
    Number const units = (fixed_costs + profit) / each.contribution;
    return BreakEven{units, ceiling(units).numerator(), each.sales * units};
}

} // namespace groat
