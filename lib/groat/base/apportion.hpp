/// Dividing a whole number of coins, or a column of exact figures, so that the parts add up to the whole:
/// the method of largest remainders (Hamilton). Each part differs from its exact share by less than one
/// step; of equal remainders the earlier part is served first, so the result never depends on chance.
#pragma once

#include <groat/base/rounding.hpp>

#include <span>
#include <vector>

namespace groat {

/// `total` divided in proportion to `weights` into whole parts that add up to `total`.
///
/// Weights are not negative; where all are 0 the first part takes all. `total` may be negative.
/// Throws `std::logic_error` when there are no weights or one is negative.
/// Example  100 by the weights 1, 1, 1  ->  34, 33, 33
[[nodiscard]] std::vector<Integer> apportion(Integer const& total, std::span<Number const> weights);

/// Every figure of a column in whole steps, such that the rounded figures add up to the rounded sum.
///
/// The sum is rounded under `tie`; the figures are rounded down and the missing steps go to the largest
/// remainders. Figures may be negative.
/// Example  1/3, 1/3, 1/3 to hundredths  ->  0.34, 0.33, 0.33
[[nodiscard]] std::vector<Number> round_together(std::span<Number const> figures,
                                                 Number const& step, Tie tie = Tie::half_even);

/// As `round_together`, for a sum that stands elsewhere already rounded to `total`, a whole number of steps
/// within one step of the exact sum.
[[nodiscard]] std::vector<Number> round_to_total(std::span<Number const> figures,
                                                 Number const& step, Number const& total);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/apportion.ipp>
#endif
