/// A shop's own look on its sheets: a picture in their head, and two colours.
#pragma once

#include <groat/base/source.hpp>
#include <groat/measure/colour.hpp>

#include <string>

namespace groat {

/// A picture that stands in the page itself.
struct Logo {
    std::string file = {};       ///< as shop.yaml names it, relative to the folder of books
    Span origin = {};            ///< where that stands
    std::string media_type = {}; ///< "image/svg+xml" or "image/png"
    std::string base64 = {};     ///< its bytes; empty where there is none

    [[nodiscard]] bool is_there() const { return !base64.empty(); }
};

/// Both colours can be read on white, see `least_contrast`.
struct Look {
    Logo logo = {};
    Colour mark = {{0x5a, 0x3a, 0x1b}}; ///< headings, rules and bars
    Colour ink = {{0x22, 0x24, 0x2a}};  ///< text
};

} // namespace groat
