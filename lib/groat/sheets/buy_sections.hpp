/// What stands on the list of what to buy besides the packs: the way from what was costed to what is paid, and the
/// purchase that is least once leftovers have been used.
#pragma once

#include <groat/plan/buying_days.hpp>
#include <groat/plan/costed_and_paid.hpp>
#include <groat/sheets/figures.hpp>

#include <vector>

namespace groat::buy_sheet_detail {

/// By what it is costed by.
[[nodiscard]] Cell amount(Number const& amount, Ingredient const& ingredient);

/// From what the quotes say of goods to what is paid.
[[nodiscard]] Table costed(CostedAndPaid const& way, Figures const& figures);

/// When to buy what would spoil, part by part; no rows where all of it keeps.
[[nodiscard]] Table by_day(std::vector<BuyingDay> const& days, Buying const& buying,
                           Book const& book);

/// The purchase that is least after the worth of its leftovers, with its packs where it is not the one listed.
void add_ahead(Sheet& sheet, Buying const& buying, Book const& book, Figures const& figures);

} // namespace groat::buy_sheet_detail

#ifndef GROAT_COMPILED
#include <groat/sheets/buy_sections.ipp>
#endif
