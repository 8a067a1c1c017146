/// How kitchen measures and whole things are named on a sheet, with what rounding did to them.
#pragma once

#include <groat/measure/household.hpp>
#include <groat/sheets/figures.hpp>

#include <string>

namespace groat {

/// "2 3/4 cup + 1 tbsp", and how much that is off where it is more than 2 %: "1/8 tsp (12 % too much)".
[[nodiscard]] std::string measure_words(HouseholdMeasure const& measure,
                                        Figures const& figures = Figures(Currency()));

/// Whole ones of what is counted, with the exact number where that is another: "7 (6.8)".
[[nodiscard]] std::string whole_words(Number const& number,
                                      Figures const& figures = Figures(Currency()));

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/measure_words.ipp>
#endif
