/// Suppliers' offers side by side, for the maker.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/price/compare.hpp>

#include <vector>

namespace groat {

/// For each comparison the offers per usable kilogram (or piece), what the wanted amount costs delivered,
/// and how the prices went.
[[nodiscard]] Sheet compare_sheet(std::vector<Comparison> const& comparisons, Book const& book,
                                  Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/compare_sheet.ipp>
#endif
