/// Money as it is calculated: an exact amount in a currency, never rounded. What is paid is `Coins`.
#pragma once

#include <groat/measure/currency.hpp>

#include <string>
#include <utility>

namespace groat {

/// An exact amount of money. Amounts of two currencies do not add: that throws `std::logic_error`, since
/// the readers refuse books that mix currencies. A default `Money` is the zero of every currency.
class Money {
public:
    Money() = default;
    Money(Number amount, Currency currency) : amount_(std::move(amount)), currency_(currency) {}

    [[nodiscard]] Number const& amount() const { return amount_; }
    [[nodiscard]] Currency currency() const { return currency_; }
    [[nodiscard]] bool is_zero() const { return amount_.is_zero(); }
    [[nodiscard]] bool is_negative() const { return amount_.is_negative(); }

    Money& operator+=(Money const& other);
    Money& operator-=(Money const& other);
    Money& operator*=(Number const& factor) {
        amount_ *= factor;
        return *this;
    }
    Money& operator/=(Number const& divisor) {
        amount_ /= divisor;
        return *this;
    }

    friend Money operator+(Money a, Money const& b) { return a += b; }
    friend Money operator-(Money a, Money const& b) { return a -= b; }
    friend Money operator-(Money a) {
        a.amount_ = -a.amount_;
        return a;
    }
    friend Money operator*(Money a, Number const& factor) { return a *= factor; }
    friend Money operator*(Number const& factor, Money a) { return a *= factor; }
    friend Money operator/(Money a, Number const& divisor) { return a /= divisor; }
    /// How many times `b` goes into `a`: a number without a currency. Throws when `b` is zero.
    friend Number operator/(Money const& a, Money const& b) {
        a.agree(b);
        return a.amount_ / b.amount_;
    }
    friend bool operator==(Money const& a, Money const& b) {
        a.agree(b);
        return a.amount_ == b.amount_;
    }
    friend std::strong_ordering operator<=>(Money const& a, Money const& b) {
        a.agree(b);
        return a.amount_ <=> b.amount_;
    }

private:
    void agree(Money const& other) const;
    Number amount_;
    Currency currency_;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/money.ipp>
#endif
