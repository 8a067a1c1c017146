#pragma once

#include <groat/paper/bars.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE Number greatest(Table const& table, std::size_t column) {
    Number most;
    for (Row const& row : table.rows) {
        if (row.kind != Row::Kind::line || column >= row.cells.size()) continue;
        if (auto const* figure = std::get_if<Figure>(&row.cells[column]))
            most = std::max(most, figure->exact);
    }
    return most;
}

GROAT_INLINE std::vector<Number> greatest_bars(Table const& table) {
    std::vector<Number> all(table.columns.size());
    for (std::size_t i = 0; i < all.size(); ++i)
        if (table.columns[i].is_bar) all[i] = greatest(table, i);
    return all;
}

GROAT_INLINE Number bar_length(Cell const& cell, Number const& most) {
    auto const* figure = std::get_if<Figure>(&cell);
    if (figure == nullptr || !most.is_positive() || !figure->exact.is_positive()) return {};
    return std::min(figure->exact / most, Number(1));
}

} // namespace groat
