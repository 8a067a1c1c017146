/// Finding one's way in a sheet: sections, rows and figures by their keys, and adding columns up as a reader
/// with a pencil would.
#pragma once

#include "books.hpp"

#include <groat/paper/sheet.hpp>
#include <groat/price/item_cost.hpp>

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace groat::test {

/// What is sold of a formula as it comes, in a standard run.
ItemCost item_cost(Costing const& costing, std::string_view item);

/// The section of a kind (`Facts`, `Table`, `Remarks`) and key, of that thing where there are several, or null.
template <class Kind>
Kind const* section(Sheet const& sheet, std::string_view key, std::string_view of = {}) {
    for (Section const& each : sheet.sections)
        if (auto const* found = std::get_if<Kind>(&each);
            found != nullptr && found->key == key && found->of == of)
            return found;
    return nullptr;
}

Table const& table(Sheet const& sheet, std::string_view key, std::string_view of = {});

Row const* find_row(Table const& table, std::string_view key);

/// What stands in a cell, as shown; empty for nothing.
std::string shown(Cell const& cell);

std::string shown(Table const& table, std::string_view row, std::string_view column);

std::string shown(Sheet const& sheet, std::string_view facts, std::string_view key,
                  std::string_view of = {});

/// Adds up every column of a table that has a figure of `unit` in a total: each total is the total before it
/// and the rows since, as printed and exactly. Says what does not add up; empty when all does.
std::string what_does_not_add_up(Table const& table, std::string_view unit);

/// As above for all tables of a sheet.
std::string what_does_not_add_up(Sheet const& sheet, std::string_view unit);

} // namespace groat::test
