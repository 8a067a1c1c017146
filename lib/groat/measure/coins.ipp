#pragma once

#include <groat/measure/coins.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE Coins& Coins::operator+=(Coins const& other) {
    if (!currency_.is_none() && !other.currency_.is_none() && !(currency_ == other.currency_))
        throw std::logic_error("coins of two currencies in one sum");
    minor_units_ += other.minor_units_;
    if (currency_.is_none()) currency_ = other.currency_;
    return *this;
}

GROAT_INLINE Coins to_coins(Money const& money, Rounding const& rounding) {
    Number const minor = money.currency().minor_unit();
    Number const step = rounding.step.is_zero() ? minor : rounding.step;
    if (!(step / minor).is_whole())
        throw std::logic_error("coins of a step that is no whole minor unit");
    Number const minor_units = round_to(money.amount(), step, rounding.tie) / minor;
    return {minor_units.numerator(), money.currency()};
}

} // namespace groat
