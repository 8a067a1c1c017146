#pragma once

#include <groat/base/rounding.hpp>

#include <groat/base/linkage.hpp>

#include <stdexcept>

namespace groat {

GROAT_INLINE Integer steps(Number const& value, Number const& step, Tie tie) {
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

GROAT_INLINE Number round_to(Number const& value, Number const& step, Tie tie) {
    return Number(steps(value, step, tie)) * step;
}

GROAT_INLINE Number ceiling(Number const& value) { return steps(value, 1, Tie::up); }
GROAT_INLINE Number floor(Number const& value) { return steps(value, 1, Tie::down); }

GROAT_INLINE Number decimal_step(unsigned places) {
    Integer scale = 1;
    for (unsigned i = 0; i < places; ++i) scale *= 10;
    return Number(1, scale);
}

GROAT_INLINE std::string decimal(Number const& value, unsigned places, Tie tie) {
    Integer const units = steps(value, decimal_step(places), tie);
    std::string digits = abs(units).str();
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    if (places > 0) digits.insert(digits.size() - places, 1, '.');
    if (units.sign() < 0) digits.insert(0, 1, '-');
    return digits;
}

GROAT_INLINE std::string decimal_at_most(Number const& value, unsigned places, Tie tie) {
    std::string digits = decimal(value, places, tie);
    if (digits.find('.') == std::string::npos) return digits;
    while (digits.back() == '0') digits.pop_back();
    if (digits.back() == '.') digits.pop_back();
    return digits == "-0" ? "0" : digits;
}

} // namespace groat
