/// What stands in one cell of a supplier's CSV: amounts and packs, with the marks and words that the map
/// declares and no others.
#pragma once

#include <groat/books/import_map.hpp>

#include <string>
#include <string_view>

namespace groat {

/// `text` with its numbers as the books write them: a point for decimals, no marks for thousands. What
/// stands between numbers is left alone.
///
/// Fails    on a mark where `marks` has none, and on thousands that are not groups of three
/// Example  `1.234,50 kg` with a decimal comma and points for thousands  ->  `1234.50 kg`
[[nodiscard]] Result<std::string> plain_numbers(std::string_view text, NumberMarks const& marks);

/// The amount in a cell of prices. A currency stands beside it only where the map says so.
///
/// Fails    on everything but digits and declared marks: signs, fractions, formulas, words
[[nodiscard]] Result<Money> parse_price_cell(std::string_view cell, ImportMap const& map,
                                             Currency currency);

namespace import_cells_detail {

/// As `trimmed`, the blanks of a spreadsheet as well.
std::string_view bare(std::string_view text);

/// A cell of packs in our words: the supplier's units replaced by ours, `12X500 G` as `12x500 G`, and under
/// `slash: packs` also `6/5 LB` as `6 x 5 LB`.
std::string in_our_units(std::string_view text, ImportMap const& map);

/// Whether a `/` stands between two numbers.
bool has_slash(std::string_view text);

} // namespace import_cells_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/import_cells.ipp>
#endif
