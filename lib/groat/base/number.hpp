/// An exact number: a rational of any size, always in lowest terms. Every quantity, price and rate in
/// groat is one, from the literal that a person wrote to the figure that is printed. It cannot be made
/// from floating point, and nothing here rounds (see rounding.hpp).
#pragma once

#include <groat/base/result.hpp>

#include <boost/multiprecision/cpp_int.hpp>

#include <compare>
#include <concepts>
#include <cstddef>
#include <string>
#include <string_view>
#include <type_traits>

namespace groat {

using Integer = boost::multiprecision::number<boost::multiprecision::cpp_int_backend<>,
                                              boost::multiprecision::et_off>;

class Number {
public:
    Number() = default;
    template <std::integral I>
    requires(!std::same_as<I, bool>) Number(I value) {
        if constexpr (std::is_signed_v<I>)
            set(static_cast<long long>(value));
        else
            set(static_cast<unsigned long long>(value));
    }
    Number(Integer const& value);
    Number(double) = delete;
    Number(float) = delete;
    Number(long double) = delete;

    /// `numerator / denominator`. Throws `std::logic_error` when the denominator is 0.
    Number(Integer const& numerator, Integer const& denominator);

    [[nodiscard]] Integer numerator() const;
    [[nodiscard]] Integer denominator() const;
    [[nodiscard]] int sign() const;
    [[nodiscard]] bool is_zero() const { return sign() == 0; }
    [[nodiscard]] bool is_negative() const { return sign() < 0; }
    [[nodiscard]] bool is_positive() const { return sign() > 0; }
    [[nodiscard]] bool is_whole() const;

    Number& operator+=(Number const& other);
    Number& operator-=(Number const& other);
    Number& operator*=(Number const& other);
    /// Throws `std::logic_error` on division by 0: whoever divides has made sure, or misuses this.
    Number& operator/=(Number const& other);

    friend Number operator+(Number a, Number const& b) { return a += b; }
    friend Number operator-(Number a, Number const& b) { return a -= b; }
    friend Number operator*(Number a, Number const& b) { return a *= b; }
    friend Number operator/(Number a, Number const& b) { return a /= b; }
    friend Number operator-(Number a) {
        a.negate();
        return a;
    }

    friend bool operator==(Number const& a, Number const& b) { return a.equals(b); }
    friend std::strong_ordering operator<=>(Number const& a, Number const& b) {
        return a.compare(b) <=> 0;
    }

private:
    void set(long long value);
    void set(unsigned long long value);
    void negate();
    [[nodiscard]] bool equals(Number const& other) const;
    [[nodiscard]] int compare(Number const& other) const;

    using Rational = boost::multiprecision::number<
        boost::multiprecision::rational_adaptor<boost::multiprecision::cpp_int_backend<>>,
        boost::multiprecision::et_off>;
    Rational value_;
};

/// The most digits that a written number may have, all parts together.
inline constexpr std::size_t most_digits = 40;

/// Reads a number as people write it: `12`, `0.25`, `.5`, `1/3`, `2 1/4`, `2½`, `-3`.
///
/// Exact, the same in every locale. Leading zeros mean nothing (`010` is ten).
/// Fails    on anything else: exponents, thousands marks, decimal commas, a denominator of 0, more than
///          `most_digits` digits
/// Example  `parse_number("2 1/4")`  ->  9/4
[[nodiscard]] Result<Number> parse_number(std::string_view text);

/// Reads the number that `text` starts with and says how many bytes it took, for grammars in which
/// something follows it (`2 3/4 cup`). Fails as `parse_number` does.
struct Scanned {
    Number number;
    std::size_t length = 0;
};
[[nodiscard]] Result<Scanned> scan_number(std::string_view text);

/// `n/d` in lowest terms, or `n` alone for a whole number: the exact form in machine output.
/// Example  `exact(Number(9) / 4)`  ->  "9/4"
[[nodiscard]] std::string exact(Number const& number);

/// The same as people write it, with the whole part apart: what `parse_number` reads.
/// Example  `mixed(Number(9) / 4)`  ->  "2 1/4"
[[nodiscard]] std::string mixed(Number const& number);

namespace number_detail {

[[nodiscard]] bool is_digit(char c);
/// How many digits, and how many blanks, stand in `text` from there on.
[[nodiscard]] std::size_t digits_at(std::string_view text, std::size_t from);
[[nodiscard]] std::size_t blanks_at(std::string_view text, std::size_t from);

/// A fraction that is one character, as ½.
struct VulgarFraction {
    std::string_view sign;
    int numerator;
    int denominator;
};
/// The one that stands there; null where none does.
[[nodiscard]] VulgarFraction const* vulgar_at(std::string_view text, std::size_t from);

} // namespace number_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/number.ipp>
#endif
