#pragma once

#include <groat/measure/costed_unit.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/measure/quantity.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE PriceUnit price_unit(Dimension dimension) {
    switch (dimension) {
    case Dimension::count: return {1, "each", "piece", 2};
    case Dimension::volume: return {1000, "L", "litre", 0};
    default: return {1000, "kg", "kilogram", 0};
    }
}

GROAT_INLINE std::string volume_text(Number const& millilitres) {
    Number const size = millilitres.is_negative() ? -millilitres : millilitres;
    if (size >= 1000)
        return fmt::format("{} L", decimal_at_most(millilitres / 1000, size >= 10000 ? 2 : 3));
    return fmt::format("{} mL", decimal_at_most(millilitres, size >= 100 ? 0 : size >= 10 ? 1 : 2));
}

GROAT_INLINE std::string amount_text(Number const& amount, Dimension dimension) {
    switch (dimension) {
    case Dimension::count: return decimal_at_most(amount, 2);
    case Dimension::volume: return volume_text(amount);
    default: return mass_text(amount);
    }
}

} // namespace groat
