/// How much has to be sold before it pays: fixed costs against what each sale leaves over its variable cost.
/// Nothing is rounded but the units, which come whole beside the exact figure. Fixed costs are stated
/// amounts; overhead rates that the books put on items are another count of the same money, and are
/// never added to them.
#pragma once

#include <groat/measure/money.hpp>
#include <groat/measure/rate.hpp>

#include <optional>
#include <utility>
#include <vector>

namespace groat {

/// What one unit brings, or one set of a mix: net of tax.
struct UnitSale {
    Money contribution; ///< price less fee and variable cost
    Money sales;        ///< price

    /// The part of each sale that is left for fixed costs; absent where nothing is asked for it.
    [[nodiscard]] std::optional<Number> ratio() const;
};

/// One set of a mix: so many units of each.
/// Example  5, 3 and 2 units that leave 3.00, 3.25 and 3.00 of 6.25, 7.75 and 9.25  ->  30.75 of 73.00
/// Source   OpenStax, Managerial Accounting, m68119
[[nodiscard]] UnitSale composite(std::vector<std::pair<Number, UnitSale>> const& parts);

struct BreakEven {
    Number units;        ///< exact
    Integer whole_units; ///< that are enough
    Money sales;         ///< of the exact units
};

/// The profit before tax that leaves `profit` after it: `profit / (1 - tax)`.
/// Fails    when the tax takes all
/// Example  24,000 after a tax of 40 %  ->  40,000
/// Source   OpenStax, Managerial Accounting, m68116
[[nodiscard]] Result<Money> before_tax(Money const& profit, Share const& tax);

/// Units that cover the fixed costs and leave a profit before tax.
///
///     units = (fixed costs + profit) / contribution,  sales = units * price
///
/// Fails    when a unit leaves nothing: then no number of sales is enough
/// Example  18,000 at a contribution of 80 on a price of 100  ->  225 units, sales of 22,500
/// Source   OpenStax, Managerial Accounting, m68116
[[nodiscard]] Result<BreakEven> break_even(Money const& fixed_costs, UnitSale const& each,
                                           Money const& profit = {});

/// The margin of safety: the part of sales that can be lost before nothing is left. Below 0 where they are not
/// enough; absent where there are none.
///
///     (sales - sales to break even) / sales
///
/// Example  500 sold, 225 to break even  ->  55 %
/// Source   OpenStax, Managerial Accounting, m68119, for the formula
[[nodiscard]] std::optional<Number> margin_of_safety(Money const& sales, BreakEven const& even);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/break_even.ipp>
#endif
