/// Units with their exact factors, and what a bare "cup" or "spoon" means in a given kitchen.
#pragma once

#include <groat/base/number.hpp>
#include <groat/measure/dimension.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// The household measures that bare words such as `cup` stand for.
///
/// us          US customary, exact (cup 236.5882365 mL)
/// label       US nutrition labelling, 21 CFR 101.9(b)(5)(viii): tsp 5, tbsp 15, fl oz 30, cup 240 mL
/// metric      tsp 5, tbsp 15, cup 250 mL (common practice, no source)
/// australian  tsp 5, tbsp 20, cup 250 mL (common practice, no source)
/// imperial    fl oz, cup (half a pint), pint, quart, gallon of the imperial gallon; tsp 5, tbsp 15 mL
enum class Measures { us, label, metric, australian, imperial };

struct Unit {
    std::string name;    ///< as it is printed: "g", "US cup"
    Dimension dimension; ///< what it measures
    Number factor;       ///< in base units of its dimension, exact
};

/// The unit that a word stands for under `measures`, or null. Units live as long as the program, so that
/// two equal pointers are the same unit. Case counts only where a unit's symbol would be another without.
/// Example  `find_unit("cup", Measures::us)`  ->  236.5882365 mL;  `find_unit("lbs", ...)`  ->  453.59237 g
[[nodiscard]] Unit const* find_unit(std::string_view word, Measures measures);

/// Every word that `find_unit` knows under `measures`, for suggestions.
[[nodiscard]] std::vector<std::string> unit_words(Measures measures);

/// The size of a disher (portion scoop) by its number: that many level scoops fill one US quart.
/// Fails    for numbers outside 1 to 200
/// Example  `scoop_volume(16)`  ->  59.147 mL, a quarter of a US cup
/// Source   Institute of Child Nutrition, "Basics at a Glance"; GNU units `scoop(n)` = 32 floz / n
[[nodiscard]] Result<Number> scoop_volume(Number const& number);

namespace unit_detail {

inline constexpr std::string_view measures_names[] = {"us", "label", "metric", "australian",
                                                      "imperial"};

} // namespace unit_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/unit.ipp>
#endif
