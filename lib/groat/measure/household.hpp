/// Weights and volumes as a kitchen without a scale measures them: cups and spoons in the sizes that are
/// sold, of the shop's own measures. What such a measure misses is always known, never hidden.
#pragma once

#include <groat/measure/quantity.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// So many of one measure: `2 1/4` of a cup.
struct MeasureTerm {
    Number count;
    std::string_view word; ///< "cup", "tbsp" or "tsp"
};

/// One or two terms that come near an amount.
struct HouseholdMeasure {
    std::vector<MeasureTerm> terms;
    Number amount; ///< what the terms come to
    Number error;  ///< by which share of the wanted amount that is too much; below 0: too little

    /// Whether it misses by more than 2 %, which a reader should be told.
    [[nodiscard]] bool is_rough() const;
};

/// What one cup, tablespoon and teaspoon hold of something: mL, or grams through its density.
struct KitchenMeasures {
    Number cup;
    Number tbsp;
    Number tsp;
};

/// The shop's own, in mL.
[[nodiscard]] KitchenMeasures kitchen_measures(Measures measures);

/// The same in grams of a thing, each by the row of its densities that was stated for that very measure, else
/// by the first; nothing where there is no row.
[[nodiscard]] std::optional<KitchenMeasures> kitchen_measures(std::vector<Density> const& densities,
                                                              Measures measures);

/// The measure for an amount in the unit that `kitchen` is in: one term where one comes within 2 %, of the
/// largest measure that does; else the nearest of two. Cups go by quarters and thirds, tablespoons by halves,
/// teaspoons by quarters, and an eighth may come on top.
/// Nothing     for less than half of an eighth of a teaspoon
/// Example     343.75 g at 125 g a cup  ->  2 3/4 cup
[[nodiscard]] std::optional<HouseholdMeasure> nearest_measure(Number const& amount,
                                                              KitchenMeasures const& kitchen);

/// "2 3/4 cup + 1 tbsp"
[[nodiscard]] std::string to_text(HouseholdMeasure const& measure);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/household.ipp>
#endif
