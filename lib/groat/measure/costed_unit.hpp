/// The unit that something bought is costed in, by its dimension: the gram, the millilitre or the piece; and
/// the larger one that its price is shown for.
#pragma once

#include <groat/base/number.hpp>
#include <groat/measure/dimension.hpp>

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

[[nodiscard]] PriceUnit price_unit(Dimension dimension);

/// A volume as a person measures it, as `mass_text` has a mass.
/// Example  `volume_text(Number(1234))`  ->  "1.234 L"
[[nodiscard]] std::string volume_text(Number const& millilitres);

/// So many grams, millilitres or pieces in words: "1.2 kg", "59 mL", "12".
[[nodiscard]] std::string amount_text(Number const& amount, Dimension dimension);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/costed_unit.ipp>
#endif
