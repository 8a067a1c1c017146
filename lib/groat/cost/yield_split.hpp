/// Where the ingredient cost goes: what is eaten, what is trimmed away, what making loses, and what whole pieces,
/// batches and packs add. Found by costing the same without losses and without wholes; the differences
/// add up exactly.
#pragma once

#include <groat/cost/breakdown.hpp>

#include <map>
#include <vector>

namespace groat {

/// Divides the ingredient cost of each of `lines`, and tells of each thing used what is eaten of it; gives the
/// sum over the lines. What takes up water, such as rice, is eaten as it was bought: nothing of it is trim.
[[nodiscard]] YieldLoss split_yield(Book const& book, Formulary const& formulary,
                                    std::vector<Sale> const& sales, std::vector<CostLine>& lines,
                                    std::map<std::size_t, IngredientUse>& uses);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/yield_split.ipp>
#endif
