/// A conversion, with what it went by.
#pragma once

#include <groat/measure/temperature.hpp>
#include <groat/paper/sheet.hpp>
#include <groat/trial/conversion.hpp>

#include <string_view>

namespace groat {

/// What was asked for, in the words of whoever asked.
struct Asked {
    std::string_view amount; ///< "2 3/4 cup"
    std::string_view item;   ///< "plain flour", or empty
    std::string_view unit;   ///< "g"
};

/// The amount in the unit wanted, exactly where rounding has hidden something, in cups and spoons where that is
/// what was wanted, and each fact of the books with its place in `sources`.
[[nodiscard]] Sheet convert_sheet(Conversion const& conversion, Asked const& asked,
                                  Convertible const& thing, Measures measures,
                                  Sources const& sources);

[[nodiscard]] Sheet convert_sheet(Temperature const& temperature, TemperatureScale scale,
                                  Asked const& asked);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/convert_sheet.ipp>
#endif
