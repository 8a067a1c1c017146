/// From what was written to grams, millilitres and pieces. Mass, volume and count meet only through facts that the
/// books state about the very thing: its density and the weight of one. A missing fact is a finding that
/// says which and where to write it, never a guess.
#pragma once

#include <groat/model/formula.hpp>
#include <groat/model/ingredient.hpp>

#include <optional>
#include <string_view>
#include <vector>

namespace groat {

/// The mass of a volume (in mL) written in `unit`, by the row of `densities` that rules for it (see
/// `density_for`). Nothing where there is no row.
[[nodiscard]] std::optional<Number> grams_of_volume(Number const& millilitres, Unit const* unit,
                                                    std::vector<Density> const& densities);

/// The mass in grams of a quantity of an ingredient.
///
/// Fails    without the density or unit weight that the quantity needs; for time, energy and the like
/// Example  `2 3/4 cup` at `125 g / cup`  ->  343.75 g
[[nodiscard]] Result<Number> grams_of(Quantity const& quantity, Ingredient const& ingredient);

/// The number of pieces in a quantity of a supply. Fails unless it is a count.
[[nodiscard]] Result<Number> pieces_of(Quantity const& quantity, Ingredient const& supply);

/// Which fact is missing to turn a count or a volume of an ingredient into its mass, and where to write it; `how` says
/// what it is ("counted here") and `otherwise` what else helps.
[[nodiscard]] Flaw missing_mass(Dimension from, Ingredient const& ingredient, std::string_view how,
                                std::string_view otherwise);

/// The same of one that is costed by the piece or by volume.
[[nodiscard]] Flaw missing_mass(Ingredient const& ingredient);

/// A quantity of what is bought in the unit that it is costed in (see `Ingredient::costed_by`).
/// Fails    without the fact that turns it into that unit
[[nodiscard]] Result<Number> amount_in(Quantity const& quantity, Ingredient const& ingredient);

/// The mass in grams of a quantity of what a formula makes, by mass or by volume.
[[nodiscard]] Result<Number> grams_of(Quantity const& quantity, Formula const& formula);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/convert.ipp>
#endif
