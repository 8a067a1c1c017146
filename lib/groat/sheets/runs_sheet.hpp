/// What runs teach about losses, for the maker.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/review/run_losses.hpp>

#include <vector>

namespace groat {

/// The day of a run as it is listed; empty where it was not written down.
[[nodiscard]] Cell run_date(Run const& run);

/// For each formula its losses by stage against the books, what to write, and run by run.
[[nodiscard]] Sheet run_losses_sheet(std::vector<RunLosses> const& all, Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/runs_sheet.ipp>
#endif
