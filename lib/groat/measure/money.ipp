#pragma once

#include <groat/measure/money.hpp>

#include <groat/base/linkage.hpp>

#include <stdexcept>

namespace groat {

GROAT_INLINE void Money::agree(Money const& other) const {
    if (!currency_.is_none() && !other.currency_.is_none() && !(currency_ == other.currency_))
        throw std::logic_error("money of two currencies in one sum");
}

GROAT_INLINE Money& Money::operator+=(Money const& other) {
    agree(other);
    amount_ += other.amount_;
    if (currency_.is_none()) currency_ = other.currency_;
    return *this;
}

GROAT_INLINE Money& Money::operator-=(Money const& other) {
    agree(other);
    amount_ -= other.amount_;
    if (currency_.is_none()) currency_ = other.currency_;
    return *this;
}

} // namespace groat
