#pragma once

#include <groat/paper/csv.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace groat {

namespace csv_drawing_detail {

/// Text made harmless, in quotation marks where it needs them.
inline std::string cell(std::string_view text) {
    std::string const safe = printable(text);
    std::string result;
    if (!safe.empty() && std::string_view("=+-@").find(safe.front()) != std::string_view::npos)
        result = "'";
    result += safe;
    if (result.find_first_of(",\"") == std::string::npos) return result;
    std::string quoted = "\"";
    for (char const c : result) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

/// The plain number of a figure: a percentage as it is shown, a mass in grams.
inline std::string number(Figure const& figure) {
    bool const is_plain = !figure.shown.empty() &&
                          figure.shown.find_first_not_of("0123456789.-") == std::string::npos;
    return is_plain ? figure.shown : decimal_at_most(figure.exact, 3);
}

inline std::string value(Cell const& cell_of) {
    if (auto const* words = std::get_if<std::string>(&cell_of)) return cell(*words);
    if (auto const* figure = std::get_if<Figure>(&cell_of)) return number(*figure);
    if (auto const* day = std::get_if<Day>(&cell_of)) return iso_date(day->date);
    return {};
}

inline std::string unit(Cell const& cell_of) {
    auto const* figure = std::get_if<Figure>(&cell_of);
    return figure == nullptr || figure->unit == "each" ? std::string() : cell(figure->unit);
}

inline void put(std::string& text, std::vector<std::string> const& cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) text += (i == 0 ? "" : ",") + cells[i];
    text += "\r\n";
}

/// The unit that all figures of a column have; nothing where they have several.
inline std::optional<std::string> unit_of_column(Table const& table, std::size_t column) {
    std::optional<std::string> found;
    for (Row const& row : table.rows) {
        if (column >= row.cells.size() || !std::holds_alternative<Figure>(row.cells[column]))
            continue;
        std::string const here = unit(row.cells[column]);
        if (found && *found != here) return std::nullopt;
        found = here;
    }
    return found.value_or(std::string());
}

struct Drawing {
    std::string& text;

    void heading(std::string const& title) const {
        put(text, {});
        if (!title.empty()) put(text, {cell(title)});
    }
    void operator()(Facts const& facts) const {
        heading(facts.title);
        for (Fact const& fact : facts.facts)
            put(text, {cell(fact.label), value(fact.value), unit(fact.value)});
    }
    void operator()(Table const& table) const {
        if (table.says_nothing()) return;
        heading(table.title);
        std::vector<std::string> titles;
        std::vector<bool> is_mixed;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            is_mixed.push_back(false);
            if (table.columns[i].is_bar) continue;
            std::string title = table.columns[i].title;
            auto const of = unit_of_column(table, i);
            bool const is_said = of && (title == *of || title.ends_with(' ' + *of));
            if (of && !of->empty() && !is_said) title += title.empty() ? *of : " (" + *of + ")";
            titles.push_back(cell(title));
            is_mixed.back() = !of;
            if (!of) titles.emplace_back("Unit"); // on no sheet that leaves the house
        }
        auto const is_blank = [](std::string const& title) { return title.empty(); };
        if (!table.rows.empty() && !std::all_of(titles.begin(), titles.end(), is_blank))
            put(text, titles);
        for (Row const& row : table.rows) {
            std::vector<std::string> cells;
            for (std::size_t i = 0; i < row.cells.size() && i < table.columns.size(); ++i) {
                if (table.columns[i].is_bar) continue;
                cells.push_back(value(row.cells[i]));
                if (is_mixed[i]) cells.push_back(unit(row.cells[i]));
            }
            put(text, cells);
        }
        if (!table.remark.empty()) put(text, {cell(table.remark)});
    }
    void operator()(Remarks const& remarks) const {
        if (remarks.lines.empty()) return;
        heading(remarks.title);
        for (std::string const& line : remarks.lines) put(text, {cell(line)});
    }
    void operator()(Chart const&) const {} // its figures stand in tables
};

} // namespace csv_drawing_detail

GROAT_INLINE std::string to_csv(Sheet const& sheet) {
    std::string text = "\xEF\xBB\xBF";
    for (std::string const& line : sheet.letterhead)
        csv_drawing_detail::put(text, {csv_drawing_detail::cell(line)});
    csv_drawing_detail::put(text, {csv_drawing_detail::cell(sheet.title)});
    for (Section const& section : sheet.sections)
        std::visit(csv_drawing_detail::Drawing{text}, section);
    return text;
}

} // namespace groat
