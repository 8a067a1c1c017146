/// Looking back as it is asked for: yield tests of some ingredients, what runs of some formulas lost, and what an order
/// really cost.
#pragma once

#include <groat/desk/day.hpp>
#include <groat/paper/sheet.hpp>
#include <groat/review/run_losses.hpp>
#include <groat/review/yield_review.hpp>

#include <string>
#include <vector>

namespace groat::desk {

/// The yield tests of the ingredients named, or of all that were tested, at the prices in force on `date`.
/// Fails    on names that the books do not have, one that nobody tested, and where there are no tests at all
[[nodiscard]] Result<std::vector<YieldReview>> yields_wished(Book const& book, Date date,
                                                             std::vector<std::string> const& names,
                                                             Diagnostics& found);

/// What the runs of the formulas named lost, or of all that have runs.
/// Fails    on names that the books do not have, where there are no runs at all, and where one of the formulas cannot
///          be calculated
[[nodiscard]] Result<std::vector<RunLosses>> losses_wished(Costing const& costing,
                                                           std::vector<std::string> const& names,
                                                           Diagnostics& found);

/// What the order called `id` really cost by its runs, against its standard at the prices of the day said, else of its
/// own date, else of today, as a sheet.
/// Fails    where there is no such order, or its variance cannot be told
[[nodiscard]] Result<Sheet> variance_sheet(LinkedBook const& linked, Dates const& dates,
                                           std::string const& id, Diagnostics& found);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/review.ipp>
#endif
