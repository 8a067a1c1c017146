/// A trial of the books, for the maker: before, after, the difference, and what would set it right.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/trial/whatif.hpp>

#include <string>
#include <vector>

namespace groat {

/// What the changes do to each line and to each category of cost. `subject` names what was looked at:
/// "order 2026-041".
[[nodiscard]] Sheet whatif_sheet(WhatIf const& trial, std::string const& subject, Book const& book);

/// What moves the cost most, the first twenty.
[[nodiscard]] Sheet sensitivity_sheet(Sensitivities const& found, Date date,
                                      std::string const& subject, Book const& book);

/// How dear an ingredient may become.
[[nodiscard]] Sheet price_limit_sheet(std::vector<PriceLimit> const& limits, std::size_t ingredient,
                                      Date date, std::string const& subject, Book const& book);

/// What it cost from day to day.
[[nodiscard]] Sheet costs_between_sheet(std::vector<CostSince> const& costs, Date to,
                                        std::string const& subject, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/whatif_sheet.ipp>
#endif
