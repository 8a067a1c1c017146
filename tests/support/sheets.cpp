#include "sheets.hpp"

#include <fmt/format.h>

#include <utility>

namespace groat::test {

ItemCost item_cost(Costing const& costing, std::string_view item) {
    return calculated([&](Diagnostics& found) {
        return cost_item(costing, index_of(costing.book(), item), nullptr, found);
    });
}

Table const& table(Sheet const& sheet, std::string_view key, std::string_view of) {
    Table const* found = section<Table>(sheet, key, of);
    REQUIRE_MESSAGE(found != nullptr, "no table " << std::string(key));
    return *found;
}

Row const* find_row(Table const& table, std::string_view key) {
    for (Row const& row : table.rows)
        if (row.key == key) return &row;
    return nullptr;
}

std::string shown(Cell const& cell) {
    if (auto const* words = std::get_if<std::string>(&cell)) return *words;
    if (auto const* figure = std::get_if<Figure>(&cell)) return figure->shown;
    if (auto const* day = std::get_if<Day>(&cell))
        return day->is_short ? iso_date(day->date) : Style().date(day->date);
    return {};
}

std::string shown(Table const& table, std::string_view row, std::string_view column) {
    Row const* found = find_row(table, row);
    REQUIRE_MESSAGE(found != nullptr, "no row " << std::string(row));
    for (std::size_t i = 0; i < table.columns.size() && i < found->cells.size(); ++i)
        if (table.columns[i].key == column) return shown(found->cells[i]);
    FAIL("no column " << std::string(column));
    return {};
}

std::string shown(Sheet const& sheet, std::string_view facts, std::string_view key,
                  std::string_view of) {
    Facts const* found = section<Facts>(sheet, facts, of);
    REQUIRE_MESSAGE(found != nullptr, "no facts " << std::string(facts));
    for (Fact const& fact : found->facts)
        if (fact.key == key) return shown(fact.value);
    return {};
}

std::string what_does_not_add_up(Table const& table, std::string_view unit) {
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
        Number printed;
        Number exactly;
        bool is_first = true;
        for (Row const& row : table.rows) {
            Figure const* figure =
                column < row.cells.size() ? std::get_if<Figure>(&row.cells[column]) : nullptr;
            bool const is_total = row.kind == Row::Kind::total;
            if (figure != nullptr && figure->unit == unit) {
                Number const value = number(figure->shown);
                if (is_total && !is_first && (value != printed || figure->exact != exactly))
                    return fmt::format("{}, column '{}', row '{}': {} printed, the rows are {}",
                                       table.key, table.columns[column].key, row.key, figure->shown,
                                       decimal(printed, 6));
                if (is_total) {
                    printed = value;
                    exactly = figure->exact;
                } else {
                    printed += value;
                    exactly += figure->exact;
                }
                is_first = false;
            }
        }
    }
    return {};
}

std::string what_does_not_add_up(Sheet const& sheet, std::string_view unit) {
    for (Section const& each : sheet.sections)
        if (auto const* found = std::get_if<Table>(&each))
            if (std::string wrong = what_does_not_add_up(*found, unit); !wrong.empty())
                return wrong;
    return {};
}

} // namespace groat::test
