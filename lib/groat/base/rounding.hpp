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

// ---------------------------------------------------------------------------------------------------

inline Integer steps(Number const& value, Number const& step, Tie tie) {
    if (!step.is_positive()) throw std::logic_error("rounding to a step that is not positive");
    Number const ratio = value / step;
    Integer const numerator = ratio.numerator();
    Integer const denominator = ratio.denominator();
    Integer quotient;
    Integer remainder;
    boost::multiprecision::divide_qr(numerator, denominator, quotient, remainder);
    if (remainder.sign() < 0) { // division truncates; the rest of this works from the floor
        remainder += denominator;
        quotient -= 1;
    }
    if (remainder.is_zero()) return quotient;
    int const half = Integer(remainder * 2).compare(denominator);
    bool raise = false;
    switch (tie) {
    case Tie::up: raise = true; break;
    case Tie::down: raise = false; break;
    case Tie::half_up: raise = half > 0 || (half == 0 && quotient.sign() >= 0); break;
    case Tie::half_even: raise = half > 0 || (half == 0 && quotient % 2 != 0); break;
    }
    return raise ? Integer(quotient + 1) : quotient;
}

inline Number round_to(Number const& value, Number const& step, Tie tie) {
    return Number(steps(value, step, tie)) * step;
}

inline Number ceiling(Number const& value) { return steps(value, 1, Tie::up); }
inline Number floor(Number const& value) { return steps(value, 1, Tie::down); }

inline Number decimal_step(unsigned places) {
    Integer scale = 1;
    for (unsigned i = 0; i < places; ++i) scale *= 10;
    return Number(1, scale);
}

inline std::string decimal(Number const& value, unsigned places, Tie tie) {
    Integer const units = steps(value, decimal_step(places), tie);
    std::string digits = abs(units).str();
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    if (places > 0) digits.insert(digits.size() - places, 1, '.');
    if (units.sign() < 0) digits.insert(0, 1, '-');
    return digits;
}

inline std::string decimal_at_most(Number const& value, unsigned places, Tie tie) {
    std::string digits = decimal(value, places, tie);
    if (digits.find('.') == std::string::npos) return digits;
    while (digits.back() == '0') digits.pop_back();
    if (digits.back() == '.') digits.pop_back();
    return digits == "-0" ? "0" : digits;
}

} // namespace groat
