#pragma once

#include <groat/paper/markdown.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/paper/scatter.hpp>
#include <groat/paper/text.hpp>

#include <string_view>
#include <vector>

namespace groat {

namespace markdown_detail {

inline std::string escaped(std::string_view text) {
    std::string result;
    for (char const c : printable(text)) {
        if (c == '<') {
            result += "&lt;";
        } else if (c == '&') {
            result += "&amp;";
        } else {
            if (std::string_view("\\`*_[]|#~!>").find(c) != std::string_view::npos) result += '\\';
            result += c;
        }
    }
    return result;
}

inline void put(std::string& text, std::vector<std::string> const& cells) {
    text += '|';
    for (std::string const& cell : cells) text += ' ' + cell + " |";
    text += '\n';
}

struct Drawing {
    std::string& text;
    Style const& style;

    void heading(std::string const& title) const {
        text += '\n';
        if (!title.empty()) text += "## " + escaped(title) + "\n\n";
    }
    void operator()(Facts const& facts) const {
        if (facts.facts.empty()) return;
        heading(facts.title);
        text += "| | |\n|---|---|\n";
        for (Fact const& fact : facts.facts)
            put(text, {escaped(fact.label),
                       escaped(text_drawing_detail::shown_alone(fact.value, style))});
    }
    void operator()(Table const& table) const {
        if (table.says_nothing()) return;
        heading(table.title);
        std::vector<std::string> titles;
        std::vector<std::string> sides;
        for (Column const& column : table.columns) {
            if (column.is_bar) continue;
            titles.push_back(escaped(column.title));
            sides.emplace_back(column.is_words ? "---" : "--:");
        }
        if (!table.rows.empty()) {
            put(text, titles);
            put(text, sides);
        }
        for (Row const& row : table.rows) {
            std::vector<std::string> cells;
            for (std::size_t i = 0; i < row.cells.size() && i < table.columns.size(); ++i) {
                if (table.columns[i].is_bar) continue;
                std::string shown = escaped(text_drawing_detail::shown(row.cells[i], style));
                bool const is_total = row.kind == Row::Kind::total && !shown.empty();
                cells.push_back(is_total ? "**" + shown + "**" : std::move(shown));
            }
            put(text, cells);
        }
        if (!table.remark.empty()) text += "\n" + escaped(table.remark) + "\n";
    }
    void operator()(Remarks const& remarks) const {
        if (remarks.lines.empty()) return;
        heading(remarks.title);
        for (std::string const& line : remarks.lines) text += "- " + escaped(line) + "\n";
    }
    void operator()(Chart const& chart) const {
        if (!chart.is_lettered) return;
        heading(chart.title); // four blanks make it stand as it is, whatever it holds
        for (std::string const& line : lettered(chart)) text += "    " + printable(line) + "\n";
    }
};

} // namespace markdown_detail

GROAT_INLINE std::string to_markdown(Sheet const& sheet) {
    std::string text;
    for (std::string const& line : sheet.letterhead)
        text += markdown_detail::escaped(line) + "  \n";
    if (!sheet.letterhead.empty()) text += '\n';
    text += "# " + markdown_detail::escaped(sheet.title) + "\n";
    for (Section const& section : sheet.sections)
        std::visit(markdown_detail::Drawing{text, sheet.style}, section);
    return text;
}

} // namespace groat
