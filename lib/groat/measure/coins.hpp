/// Money as it is paid: a whole number of minor units. The only way from `Money` to `Coins` is a rounding
/// that is named where it happens.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/measure/money.hpp>

#include <utility>

namespace groat {

/// How an amount becomes payable: to multiples of `step` (one minor unit where it is 0) under `tie`.
struct Rounding {
    Tie tie = Tie::half_up;
    Number step = 0;
};

/// A payable amount. Coins of two currencies do not add: that throws `std::logic_error`.
class Coins {
public:
    Coins() = default;
    Coins(Integer minor_units, Currency currency)
        : minor_units_(std::move(minor_units)), currency_(currency) {}

    [[nodiscard]] Integer const& minor_units() const { return minor_units_; }
    [[nodiscard]] Currency currency() const { return currency_; }
    [[nodiscard]] bool is_zero() const { return minor_units_.is_zero(); }
    [[nodiscard]] Money money() const {
        return {Number(minor_units_) * currency_.minor_unit(), currency_};
    }

    Coins& operator+=(Coins const& other);
    friend Coins operator+(Coins a, Coins const& b) { return a += b; }
    friend Coins operator-(Coins const& a) { return {-a.minor_units_, a.currency_}; }
    friend Coins operator-(Coins const& a, Coins const& b) { return a + -b; }
    friend Coins operator*(Coins const& a, Integer const& count) {
        return {a.minor_units_ * count, a.currency_};
    }
    friend bool operator==(Coins const& a, Coins const& b) { return (a - b).is_zero(); }
    friend std::strong_ordering operator<=>(Coins const& a, Coins const& b) {
        return (a - b).minor_units_.sign() <=> 0;
    }

private:
    Integer minor_units_ = 0;
    Currency currency_;
};

/// `money` rounded to what can be paid.
/// Throws `std::logic_error` when the step is not a whole number of minor units.
/// Example  365.125 NOK, half up  ->  365.13 NOK   (half even would give 365.12)
[[nodiscard]] Coins to_coins(Money const& money, Rounding const& rounding = {});

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/coins.ipp>
#endif
