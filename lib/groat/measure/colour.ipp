#pragma once

#include <groat/measure/colour.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE Number const& least_contrast() {
    static Number const least = Number(9) / 2;
    return least;
}

namespace colour_detail {

inline int digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

/// The greatest whole number whose fifth power is not above `power`, which is below `limit^5`.
inline Integer fifth_root(Integer const& power, Integer const& limit) {
    Integer low = 0;
    Integer high = limit;
    while (high - low > 1) {
        Integer const middle = (low + high) / 2;
        if (boost::multiprecision::pow(middle, 5) <= power)
            low = middle;
        else
            high = middle;
    }
    return low;
}

/// A part made linear. The power 2.4 is the fifth root of the twelfth power, here to a billionth.
inline Number linear(int part) {
    Number const value = Number(part) / 255;
    if (value * 100000 <= 4045) return value * 100 / 1292;
    Integer const billion = 1'000'000'000;
    Integer const above = 1000 * part + 14025; // (value + 0.055) / 1.055 = above / 269025
    Integer const power = boost::multiprecision::pow(above, 12) *
                          boost::multiprecision::pow(billion, 5) /
                          boost::multiprecision::pow(Integer(269025), 12);
    return Number(fifth_root(power, billion + 1), billion);
}

} // namespace colour_detail

GROAT_INLINE Result<Colour> parse_colour(std::string_view text) {
    bool const is_short = text.size() == 4;
    bool is_one = text.starts_with('#') && (is_short || text.size() == 7);
    for (std::size_t i = 1; is_one && i < text.size(); ++i)
        is_one = colour_detail::digit(text[i]) >= 0;
    if (!is_one)
        return refuse("bad-colour", fmt::format("'{}' is not a colour", shortened(text, 32)),
                      "write red, green and blue as '#5a3a1b', in quotation marks");
    Colour colour;
    for (std::size_t i = 0; i < 3; ++i)
        colour.parts[i] = is_short ? 17 * colour_detail::digit(text[1 + i])
                                   : 16 * colour_detail::digit(text[1 + 2 * i]) +
                                         colour_detail::digit(text[2 + 2 * i]);
    return colour;
}

GROAT_INLINE std::string hex(Colour const& colour) {
    return fmt::format("#{:02x}{:02x}{:02x}", colour.parts[0], colour.parts[1], colour.parts[2]);
}

GROAT_INLINE Number contrast_with_white(Colour const& colour) {
    auto const part = [&](std::size_t i) { return colour_detail::linear(colour.parts[i]); };
    Number const luminance = (part(0) * 2126 + part(1) * 7152 + part(2) * 722) / 10000;
    return Number(105) / (luminance * 100 + 5);
}

} // namespace groat
