/// Quantities as people write them, held exactly in base units.
#pragma once

#include <groat/base/number.hpp>
#include <groat/base/source.hpp>
#include <groat/measure/unit.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// An exact amount of mass, volume, count, time, energy, power or distance.
struct Quantity {
    Number amount; ///< in base units of the dimension
    Dimension dimension = Dimension::count;
    Unit const* unit = nullptr; ///< the (first) unit it was written in; null for scoops

    [[nodiscard]] bool is(Dimension wanted) const { return dimension == wanted; }
    friend bool operator==(Quantity const& a, Quantity const& b) {
        return a.dimension == b.dimension && a.amount == b.amount;
    }
};

/// Reads a quantity: `620 g`, `2 3/4 cup`, `1 lb 4 oz`, `3`, `15 dozen`, `12 x 500 g`, `#60 scoop`.
///
/// A bare number is a count. A bare cup, spoon, fluid ounce, pint, quart or gallon is the one of
/// `measures`; `US cup`, `label cup` and `imperial pint` name their own. Packs may nest (`4 x 12 x 500 g`).
/// Fails    on unknown units (with the nearest known one), sums over two dimensions, and whatever
///          `parse_number` refuses. A negative amount is read: whether it makes sense is for the caller.
/// Example  `parse_quantity("1 lb 4 oz", Measures::us)`  ->  566.9904625 g
[[nodiscard]] Result<Quantity> parse_quantity(std::string_view text, Measures measures);

/// A mass per volume, exact, and the unit of volume it was stated for.
struct Density {
    Number grams_per_millilitre;
    Unit const* per = nullptr;
    Span origin = {};
};

/// The row of `densities`, which are not none, that was stated for `unit`, else the first. Rows are kept apart
/// on purpose: published household weights are rounded one by one and do not agree.
[[nodiscard]] Density const& density_for(Unit const* unit, std::vector<Density> const& densities);

/// Reads `125 g / cup` or `950 g per L`.
/// Fails    unless it is a mass above 0 per one unit of volume
[[nodiscard]] Result<Density> parse_density(std::string_view text, Measures measures);

/// A mass as a person weighs it: grams below 1000 g, else kilograms, with what digits mean something.
/// Example  `mass_text(Number(1234))`  ->  "1.234 kg"
[[nodiscard]] std::string mass_text(Number const& grams);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/quantity.ipp>
#endif
