/// Figures as lengths: a column of a table whose figures are drawn as bars, each against the greatest of its
/// column. Its figures stand in another column as well, so a form that draws no bars leaves it out.
#pragma once

#include <groat/paper/sheet.hpp>

#include <cstddef>
#include <vector>

namespace groat {

/// The greatest figure of a column, or 0. Totals are no parts of themselves and do not count.
[[nodiscard]] Number greatest(Table const& table, std::size_t column);

/// `greatest` of each column of bars, 0 for the others.
[[nodiscard]] std::vector<Number> greatest_bars(Table const& table);

/// The length of a bar as a part of the longest; 0 where there is none to draw.
[[nodiscard]] Number bar_length(Cell const& cell, Number const& most);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/bars.ipp>
#endif
