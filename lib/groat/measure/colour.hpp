/// Colours of a screen, and whether they can be read on white paper.
#pragma once

#include <groat/base/number.hpp>

#include <array>
#include <string>
#include <string_view>

namespace groat {

/// Red, green and blue, each from 0 to 255.
struct Colour {
    std::array<int, 3> parts = {};

    friend bool operator==(Colour const&, Colour const&) = default;
};

/// Reads `#rgb` or `#rrggbb`.
/// Fails    on anything else, names of colours among them
/// Example  `parse_colour("#5a3")`  ->  85, 170, 51
[[nodiscard]] Result<Colour> parse_colour(std::string_view text);

/// As `#rrggbb` in small letters.
[[nodiscard]] std::string hex(Colour const& colour);

/// The contrast of a colour with white, from 1 (white) to 21 (black), to about a billionth.
///
///     L = 0.2126 R + 0.7152 G + 0.0722 B,  contrast = 1.05 / (L + 0.05)
///
/// where each part is made linear: c / 12.92 up to c = 0.04045, above ((c + 0.055) / 1.055)^2.4.
/// Example  #767676  ->  4.54
/// Source   WCAG 2.2, "contrast ratio" and "relative luminance", https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio
[[nodiscard]] Number contrast_with_white(Colour const& colour);

/// The least contrast of text, WCAG 2.2 success criterion 1.4.3 (level AA).
Number const& least_contrast();

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/colour.ipp>
#endif
