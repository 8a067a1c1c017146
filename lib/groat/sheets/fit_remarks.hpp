/// What a run does not fill, in words, and which runs would.
#pragma once

#include <groat/price/run_fit.hpp>
#include <groat/sheets/figures.hpp>

#include <vector>

namespace groat {

/// A sentence for each batch, mix or oven load that the run does not fill. `unit` null: runs are counted in pieces.
/// Example  "Shell: 49 started in 3 oven loads, enough for 2.04; a run of 47 or 70 fills what it takes."
[[nodiscard]] Remarks fit_remarks(std::vector<Misfit> const& misfits, Book const& book,
                                  SaleUnit const* unit, Figures const& figures);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/fit_remarks.ipp>
#endif
