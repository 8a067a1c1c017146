/// What one is asked and costs at other quantities, for the maker's eye: the table of tiers says the same in figures.
#pragma once

#include <groat/price/quoted.hpp>
#include <groat/sheets/figures.hpp>

#include <vector>

namespace groat {

/// The tiers of a line, in the order of their counts.
[[nodiscard]] std::vector<Tier const*> tiers_of(Quote const& quote, std::size_t line);

/// For each line its price each, tier by tier, and what one costs at the worst count of each. None where a line has fewer
/// than three tiers, or there are more lines than anybody would look at.
[[nodiscard]] std::vector<Chart> tier_charts(Quote const& quote, Book const& book,
                                             Figures const& figures);

/// Ticks from 0 in steps of 2, 5 or 10 times a power of ten, but of `least` at least: three to five above 0 where
/// that allows it, the last not below `most`.
/// Example  81 by 0.01  ->  0, 20, 40, 60, 80, 100
[[nodiscard]] std::vector<Number> even_ticks(Number const& most, Number const& least);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/tier_charts.ipp>
#endif
