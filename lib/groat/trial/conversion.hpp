/// One amount in another unit: within a dimension by definition, from one dimension into another only by
/// what the books say of the very thing, which is then named with its place. Exact.
#pragma once

#include <groat/model/formula.hpp>
#include <groat/model/ingredient.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// A thing of the books that amounts can be of. Without a name: nothing in particular.
struct Convertible {
    std::string name = {};
    std::vector<Density> densities = {};
    std::optional<Number> grams_each = {};
    Span grams_each_origin = {};
    std::string where_to_write = {}; ///< the file or formula that a missing fact belongs into
};

/// Food, a supply or a formula as a thing to convert.
[[nodiscard]] Convertible convertible(Ingredient const& ingredient);
[[nodiscard]] Convertible convertible(Formula const& formula);

/// A fact of the books that a conversion went by: a density, or the weight of one.
struct UsedFact {
    std::optional<Density> density; ///< absent: the weight of one
    Number grams_each;
    Span origin;
};

struct Conversion {
    Quantity from;
    Quantity unit;               ///< one of the wanted unit
    Number amount;               ///< in the wanted unit
    std::vector<UsedFact> facts; ///< in the order they were used
};

/// One of a unit: `g`, `cup`, `#24 scoop`.
/// Fails    on what is no unit, with the nearest, and on a number in front of it
[[nodiscard]] Result<Quantity> parse_unit(std::string_view text, Measures measures);

/// So much of a thing in another unit. A volume goes by the density row of the unit it was written in, or is
/// wanted in, else by the first.
/// Fails    where the books lack the density or weight that it takes, saying which; and between dimensions
///          that nothing converts, such as time and mass
/// Example  2 3/4 cup of flour at 125 g / cup in g  ->  343.75
[[nodiscard]] Result<Conversion> convert(Quantity const& from, Quantity const& unit,
                                         Convertible const& thing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/trial/conversion.ipp>
#endif
