/// Figures as lengths: a column of a table whose figures are drawn as bars, each against the greatest of its
/// column. Its figures stand in another column as well, so a form that draws no bars leaves it out.
#pragma once

#include <groat/paper/sheet.hpp>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace groat {

/// The greatest figure of a column, or 0. Totals are no parts of themselves and do not count.
[[nodiscard]] inline Number greatest(Table const& table, std::size_t column) {
    Number most;
    for (Row const& row : table.rows) {
        if (row.kind != Row::Kind::line || column >= row.cells.size()) continue;
        if (auto const* figure = std::get_if<Figure>(&row.cells[column]))
            most = std::max(most, figure->exact);
    }
    return most;
}

/// `greatest` of each column of bars, 0 for the others.
[[nodiscard]] inline std::vector<Number> greatest_bars(Table const& table) {
    std::vector<Number> all(table.columns.size());
    for (std::size_t i = 0; i < all.size(); ++i)
        if (table.columns[i].is_bar) all[i] = greatest(table, i);
    return all;
}

/// The length of a bar as a part of the longest; 0 where there is none to draw.
[[nodiscard]] inline Number bar_length(Cell const& cell, Number const& most) {
    auto const* figure = std::get_if<Figure>(&cell);
    if (figure == nullptr || !most.is_positive() || !figure->exact.is_positive()) return {};
    return std::min(figure->exact / most, Number(1));
}

} // namespace groat
