/// The one home of rounding. Whoever rounds says how, by name; a rounded figure that will be paid gets a
/// type of its own (see measure/coins.hpp). Everything here is exact until the last step.
#pragma once

#include <groat/base/number.hpp>

#include <string>

namespace groat {

/// What happens to a figure that lies between two steps.
enum class Tie {
    half_even, ///< to the nearest, a tie to the even step: the default for printed figures
    half_up,   ///< to the nearest, a tie away from zero: what invoices use
    up,        ///< to the next step towards plus infinity
    down,      ///< to the next step towards minus infinity
};

/// The whole number of steps nearest to `value / step` under `tie`.
/// Throws `std::logic_error` unless the step is positive.
/// Example  `steps(Number(7) / 2, 1, Tie::half_even)`  ->  4
[[nodiscard]] Integer steps(Number const& value, Number const& step, Tie tie);

/// `value` rounded to whole multiples of `step`.
/// Example  `round_to(Number(365125) / 1000, Number(1) / 100, Tie::half_up)`  ->  365.13
[[nodiscard]] Number round_to(Number const& value, Number const& step, Tie tie);

/// The least whole number that is not below `value`.
[[nodiscard]] Number ceiling(Number const& value);
/// The greatest whole number that is not above `value`.
[[nodiscard]] Number floor(Number const& value);

/// `1 / 10^places`.
[[nodiscard]] Number decimal_step(unsigned places);

/// `value` with exactly `places` digits behind the point, whole part without marks for thousands.
/// Example  `decimal(Number(2) / 3, 2)`  ->  "0.67"
[[nodiscard]] std::string decimal(Number const& value, unsigned places, Tie tie = Tie::half_even);

/// `value` with at most `places` digits behind the point and no trailing zeros.
/// Example  `decimal_at_most(Number(5) / 2, 3)`  ->  "2.5"
[[nodiscard]] std::string decimal_at_most(Number const& value, unsigned places,
                                          Tie tie = Tie::half_even);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/rounding.ipp>
#endif
