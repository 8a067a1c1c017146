/// A sheet as plain text for a terminal or a letter, aligned by display width.
#pragma once

#include <groat/paper/sheet.hpp>

#include <string>

namespace groat {

/// Draws any sheet, `columns` wide where the figures allow it: words wrap, figures never do. A table that is too wide
/// goes without the sign of the currency, then breaks long words, then the titles of figures. Names from outside
/// are made harmless.
[[nodiscard]] std::string to_text(Sheet const& sheet, std::size_t columns = 80);

namespace text_drawing_detail {

/// What a cell shows. In a table the unit stands in the column's title, save for percentages and the sign of
/// a currency.
std::string shown(Cell const& cell, Style const& style);

/// As `shown`, with the unit, for a figure that stands alone; the sign of money is its unit.
std::string shown_alone(Cell const& cell, Style const& style);

} // namespace text_drawing_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/text.ipp>
#endif
