/// The unit that something bought is costed in, by its dimension: the gram, the millilitre or the piece; and
/// the larger one that its price is shown for.
#pragma once

#include <groat/measure/quantity.hpp>

#include <fmt/format.h>

#include <string>
#include <string_view>

namespace groat {

/// What a price is shown for.
struct PriceUnit {
    Number size;           ///< in grams, millilitres or pieces
    std::string_view word; ///< behind a number
    std::string_view noun;
    unsigned more; ///< digits of the price beyond the minor unit
};

[[nodiscard]] inline PriceUnit price_unit(Dimension dimension) {
    switch (dimension) {
    case Dimension::count: return {1, "each", "piece", 2};
    case Dimension::volume: return {1000, "L", "litre", 0};
    default: return {1000, "kg", "kilogram", 0};
    }
}

/// A volume as a person measures it, as `mass_text` has a mass.
/// Example  `volume_text(Number(1234))`  ->  "1.234 L"
[[nodiscard]] inline std::string volume_text(Number const& millilitres) {
    Number const size = millilitres.is_negative() ? -millilitres : millilitres;
    if (size >= 1000)
        return fmt::format("{} L", decimal_at_most(millilitres / 1000, size >= 10000 ? 2 : 3));
    return fmt::format("{} mL", decimal_at_most(millilitres, size >= 100 ? 0 : size >= 10 ? 1 : 2));
}

/// So many grams, millilitres or pieces in words: "1.2 kg", "59 mL", "12".
[[nodiscard]] inline std::string amount_text(Number const& amount, Dimension dimension) {
    switch (dimension) {
    case Dimension::count: return decimal_at_most(amount, 2);
    case Dimension::volume: return volume_text(amount);
    default: return mass_text(amount);
    }
}

} // namespace groat
