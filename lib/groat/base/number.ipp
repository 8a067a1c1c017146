#pragma once

#include <groat/base/number.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <stdexcept>

namespace groat {

GROAT_INLINE Number::Number(Integer const& numerator, Integer const& denominator) {
    if (denominator.is_zero()) throw std::logic_error("a Number with denominator 0");
    // Boost 1.74 refuses a negative denominator.
    value_ = denominator.sign() < 0 ? Rational(Integer(-numerator), Integer(-denominator))
                                    : Rational(numerator, denominator);
}

GROAT_INLINE Number::Number(Integer const& value) : value_(value) {}

GROAT_INLINE void Number::set(long long value) { value_ = value; }
GROAT_INLINE void Number::set(unsigned long long value) { value_ = value; }
GROAT_INLINE void Number::negate() { value_.backend().negate(); }
GROAT_INLINE bool Number::equals(Number const& other) const { return value_ == other.value_; }
GROAT_INLINE int Number::compare(Number const& other) const { return value_.compare(other.value_); }

GROAT_INLINE Integer Number::numerator() const { return boost::multiprecision::numerator(value_); }
GROAT_INLINE Integer Number::denominator() const {
    return boost::multiprecision::denominator(value_);
}
GROAT_INLINE int Number::sign() const { return value_.sign(); }
GROAT_INLINE bool Number::is_whole() const { return denominator() == 1; }

GROAT_INLINE Number& Number::operator+=(Number const& other) {
    value_ += other.value_;
    return *this;
}

GROAT_INLINE Number& Number::operator-=(Number const& other) {
    value_ -= other.value_;
    return *this;
}

GROAT_INLINE Number& Number::operator*=(Number const& other) {
    value_ *= other.value_;
    return *this;
}

GROAT_INLINE Number& Number::operator/=(Number const& other) {
    if (other.is_zero()) throw std::logic_error("a Number divided by 0");
    value_ /= other.value_;
    return *this;
}

GROAT_INLINE std::string exact(Number const& number) {
    if (number.is_whole()) return number.numerator().str();
    return number.numerator().str() + '/' + number.denominator().str();
}

GROAT_INLINE std::string mixed(Number const& number) {
    Integer const size = abs(number.numerator());
    Integer const whole = size / number.denominator();
    std::string text = number.is_negative() ? "-" : "";
    if (!whole.is_zero() || number.is_whole()) text += whole.str();
    if (number.is_whole()) return text;
    if (!whole.is_zero()) text += ' ';
    return text + exact(Number(size - whole * number.denominator(), number.denominator()));
}

namespace number_detail {

inline constexpr VulgarFraction vulgar_fractions[] = {
    {"½", 1, 2}, {"¼", 1, 4}, {"¾", 3, 4}, {"⅓", 1, 3}, {"⅔", 2, 3},
    {"⅕", 1, 5}, {"⅖", 2, 5}, {"⅗", 3, 5}, {"⅘", 4, 5}, {"⅙", 1, 6},
    {"⅚", 5, 6}, {"⅛", 1, 8}, {"⅜", 3, 8}, {"⅝", 5, 8}, {"⅞", 7, 8},
};

GROAT_INLINE bool is_digit(char c) { return c >= '0' && c <= '9'; }

GROAT_INLINE std::size_t digits_at(std::string_view text, std::size_t from) {
    std::size_t count = 0;
    while (from + count < text.size() && is_digit(text[from + count])) ++count;
    return count;
}

GROAT_INLINE std::size_t blanks_at(std::string_view text, std::size_t from) {
    std::size_t count = 0;
    while (from + count < text.size() && text[from + count] == ' ') ++count;
    return count;
}

/// `digits` holds decimal digits only: Boost's own reader would take a leading 0 as octal.
inline Integer whole(std::string_view digits) {
    Integer value = 0;
    for (char const c : digits) value = value * 10 + (c - '0');
    return value;
}

GROAT_INLINE VulgarFraction const* vulgar_at(std::string_view text, std::size_t from) {
    for (auto const& fraction : vulgar_fractions)
        if (text.substr(from).starts_with(fraction.sign)) return &fraction;
    return nullptr;
}

} // namespace number_detail

GROAT_INLINE Result<Scanned> scan_number(std::string_view text) {
    namespace grammar = number_detail;
    auto const bad = [&](std::string help, std::size_t at = 0) {
        return refuse("bad-number", fmt::format("'{}' is not a number", shortened(text, 32)),
                      std::move(help), at, 1);
    };
    bool const negative = text.starts_with('-');
    std::size_t const start = negative ? 1 : 0;
    std::size_t at = start;
    std::size_t digits = 0;
    Number value;
    auto const take = [&](std::size_t count) {
        digits += count;
        auto const part = text.substr(at, count);
        at += count;
        return part;
    };
    auto const too_long = [&] {
        return refuse("number-too-long",
                      fmt::format("a number of {} digits; the most is {}", digits, most_digits),
                      "write fewer digits", 0, text.size());
    };

    std::size_t const leading = grammar::digits_at(text, at);
    if (leading > most_digits) {
        digits = leading;
        return too_long();
    }
    if (leading > 0) value = grammar::whole(take(leading));
    bool any = leading > 0;

    if (at < text.size() && text[at] == '.') {
        std::size_t const places = grammar::digits_at(text, at + 1);
        if (places == 0) return bad("write a digit after the point, as in 0.25", at);
        ++at;
        if (digits + places > most_digits) {
            digits += places;
            return too_long();
        }
        Integer scale = 1;
        for (std::size_t i = 0; i < places; ++i) scale *= 10;
        value += Number(grammar::whole(take(places)), scale);
        any = true;
    } else if (any && at < text.size() && text[at] == '/') {
        std::size_t const places = grammar::digits_at(text, at + 1);
        if (places == 0) return bad("write a fraction as 1/3", at);
        ++at;
        if (digits + places > most_digits) {
            digits += places;
            return too_long();
        }
        Integer const denominator = grammar::whole(take(places));
        if (denominator.is_zero()) return bad("a fraction cannot have 0 below the line", at - 1);
        value /= denominator;
    } else {
        // a mixed number: `2 1/4`, or `2½`, `2 ½`, `½`
        std::size_t const gap = any ? grammar::blanks_at(text, at) : 0;
        if (auto const* vulgar = grammar::vulgar_at(text, at + gap)) {
            value += Number(vulgar->numerator, vulgar->denominator);
            at += gap + vulgar->sign.size();
            any = true;
        } else if (gap > 0) {
            std::size_t const above = grammar::digits_at(text, at + gap);
            std::size_t const slash = at + gap + above;
            std::size_t const below =
                slash < text.size() && text[slash] == '/' ? grammar::digits_at(text, slash + 1) : 0;
            if (above > 0 && below > 0) {
                if (digits + above + below > most_digits) {
                    digits += above + below;
                    return too_long();
                }
                at += gap;
                Integer const numerator = grammar::whole(take(above));
                ++at;
                Integer const denominator = grammar::whole(take(below));
                if (denominator.is_zero())
                    return bad("a fraction cannot have 0 below the line", at - 1);
                value += Number(numerator, denominator);
            }
        }
    }
    if (!any) return bad("write a number such as 12, 0.25, 1/3 or 2 1/4");
    if (at < text.size()) {
        char const next = text[at];
        bool const digit_follows = at + 1 < text.size() && grammar::is_digit(text[at + 1]);
        if (next == ',' && digit_follows)
            return bad("write a point for the decimals and no mark for thousands, as in 1250.75",
                       at);
        if ((next == 'e' || next == 'E') &&
            (digit_follows ||
             (at + 2 < text.size() && (text[at + 1] == '+' || text[at + 1] == '-') &&
              grammar::is_digit(text[at + 2]))))
            return bad("powers of ten are not read; write the number out", at);
        if (next == '.' || next == '/')
            return bad("write a number such as 12, 0.25, 1/3 or 2 1/4", at);
    }
    return Scanned{negative ? -value : value, at};
}

GROAT_INLINE Result<Number> parse_number(std::string_view text) {
    auto scanned = scan_number(text);
    if (!scanned) return Refused(scanned.error());
    if (scanned->length != text.size())
        return refuse("bad-number", fmt::format("'{}' is not a number", shortened(text, 32)),
                      "write a number such as 12, 0.25, 1/3 or 2 1/4", scanned->length,
                      text.size() - scanned->length);
    return scanned->number;
}

} // namespace groat
