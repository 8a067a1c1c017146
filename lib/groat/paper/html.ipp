#pragma once

#include <groat/paper/html.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/paper/bars.hpp>
#include <groat/paper/html_chart.hpp>
#include <groat/paper/html_style.hpp>
#include <groat/paper/html_text.hpp>
#include <groat/paper/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

namespace groat {

namespace html_detail {

class Drawing {
public:
    Drawing(std::string& text, Sheet const& sheet)
        : text_(text), style_(sheet.style), heading_(sheet.title) {}

    void operator()(Facts const& facts) {
        if (facts.facts.empty()) return;
        begin(facts.title, facts.facts.size() <= most_short);
        // under the title a letter's head; else short figures go side by side
        text_ += is_first_ && facts.title.empty() && is_brief(facts) ? "<dl class=\"head\">\n"
                 : facts.facts.size() > 3 && is_brief(facts)         ? "<dl class=\"pairs\">\n"
                                                                     : "<dl>\n";
        for (Fact const& fact : facts.facts)
            text_ += "<div><dt>" + escaped(fact.label) + "</dt><dd>" +
                     escaped(text_drawing_detail::shown_alone(fact.value, style_)) +
                     "</dd></div>\n";
        text_ += "</dl>\n";
        end();
    }

    void operator()(Table const& table) {
        if (table.says_nothing()) return;
        begin(table.title, table.rows.size() <= most_short);
        if (!table.rows.empty()) put(table);
        if (!table.remark.empty()) text_ += "<p class=\"note\">" + escaped(table.remark) + "</p>\n";
        end();
    }

    void operator()(Remarks const& remarks) {
        if (remarks.lines.empty()) return;
        begin(remarks.title, remarks.lines.size() <= 4, "words");
        for (std::string const& line : remarks.lines) text_ += "<p>" + escaped(line) + "</p>\n";
        end();
    }

    void operator()(Chart const& chart) {
        begin(chart.title, true);
        text_ += "<figure>";
        open_box();
        text_ += to_svg(chart, heading_, fmt::format("s{}", number_)) + "</div>\n";
        if (!chart.remark.empty())
            text_ += "<figcaption>" + escaped(chart.remark) + "</figcaption>";
        text_ += "</figure>\n";
        end();
    }

private:
    static constexpr std::size_t most_short = 14; ///< rows that are kept on one page

    /// Paper does not scroll: what is wider than a page is set smaller there. Widths are counted in figures.
    [[nodiscard]] std::string fit(Table const& table) const {
        constexpr std::size_t page = 84;
        constexpr std::size_t widest_word = 16;
        std::size_t wide = 0;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            std::size_t column = table.columns[i].is_bar ? widest_word : 0;
            for (Row const& row : table.rows)
                if (i < row.cells.size() && !table.columns[i].is_bar)
                    column = std::max(
                        column, display_width(text_drawing_detail::shown(row.cells[i], style_)));
            wide += (table.columns[i].is_words ? std::min(column, widest_word) : column) + 2;
        }
        return wide <= page ? std::string()
                            : fmt::format(" style=\"--fit:{}%\"", page * 100 / wide);
    }

    /// A section without a title goes on with the one before.
    void begin(std::string const& title, bool is_short, std::string kinds = {}) {
        ++number_;
        auto const add = [&](std::string const& kind) {
            kinds += (kinds.empty() ? "" : " ") + kind;
        };
        if (is_short) add("short");
        if (title.empty() && !is_first_) add("more");
        text_ += kinds.empty() ? "<section>\n" : "<section class=\"" + kinds + "\">\n";
        if (title.empty()) return;
        heading_ = title;
        text_ += "<h2>" + escaped(title) + "</h2>\n";
    }
    void end() {
        text_ += "</section>\n";
        is_first_ = false;
    }
    void open_box() {
        text_ += "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"" +
                 escaped(heading_) + "\">";
    }

    [[nodiscard]] bool is_brief(Facts const& facts) const {
        constexpr std::size_t longest = 34;
        for (Fact const& fact : facts.facts)
            if (display_width(text_drawing_detail::shown_alone(fact.value, style_)) > longest)
                return false;
        return true;
    }

    void put(Table const& table) {
        bool const is_boxed = table.columns.size() > 2;
        if (is_boxed) open_box();
        text_ += "<table" + fit(table) + ">\n";
        put_titles(table);
        text_ += "<tbody>\n";
        std::size_t const last = last_total(table);
        std::vector<Number> const most = greatest_bars(table);
        for (std::size_t i = 0; i < table.rows.size(); ++i)
            put(table, table.rows[i], most, i == last ? " last" : "");
        text_ += "</tbody></table>";
        text_ += is_boxed ? "</div>\n" : "\n";
    }

    /// The total that ends an addition of several steps: what went before it and the rows since; or the only one,
    /// where more follows on it (a deposit). None where each total stands for itself.
    static std::size_t last_total(Table const& table) {
        std::size_t last = table.rows.size();
        std::size_t column = table.columns.size() - 1;
        while (column > 0 && table.columns[column].is_bar) --column;
        Number sum;
        std::size_t count = 0;
        for (std::size_t i = 0; i < table.rows.size(); ++i) {
            Row const& row = table.rows[i];
            auto const* figure =
                column < row.cells.size() ? std::get_if<Figure>(&row.cells[column]) : nullptr;
            if (figure == nullptr) continue;
            if (row.kind != Row::Kind::total) {
                sum += figure->exact;
                continue;
            }
            if (count > 0)
                last = figure->exact == sum ? i : table.rows.size();
            else if (i + 1 < table.rows.size() && table.rows[i + 1].kind == Row::Kind::subtotal)
                last = i;
            sum = figure->exact;
            ++count;
        }
        return last;
    }

    void put_titles(Table const& table) {
        bool has_titles = false;
        for (Column const& column : table.columns) has_titles = has_titles || !column.title.empty();
        if (!has_titles) return;
        text_ += "<thead><tr>";
        for (Column const& column : table.columns) {
            if (column.title.empty())
                text_ += "<td></td>";
            else
                text_ += std::string("<th scope=\"col\"") +
                         (column.is_words ? " class=\"w\"" : "") + ">" + escaped(column.title) +
                         "</th>";
        }
        text_ += "</tr></thead>\n";
    }

    /// A picture of nothing but its length; what it says stands in words in the same row.
    std::string bar(Cell const& cell, Number const& most) const {
        Number const length = bar_length(cell, most);
        if (length.is_zero()) return {};
        return "<svg viewBox=\"0 0 100 10\" preserveAspectRatio=\"none\" role=\"img\" aria-label=\"" +
               escaped(text_drawing_detail::shown(cell, style_)) + "\"><rect width=\"" +
               decimal_at_most(length * 100, 2) + "\" height=\"10\"/></svg>";
    }

    /// How many cells after the first are empty before the one at the end; 0 where others stand between.
    static std::size_t gap(Table const& table, Row const& row) {
        std::size_t const count = row.cells.size();
        if (row.kind == Row::Kind::line || count < 4 || count != table.columns.size()) return 0;
        for (std::size_t i = 1; i + 1 < count; ++i)
            if (!std::holds_alternative<std::monostate>(row.cells[i])) return 0;
        return count - 2;
    }

    /// The first words of a row are its head; those of a sum stand beside their figure.
    void put(Table const& table, Row const& row, std::vector<Number> const& most,
             std::string_view more) {
        constexpr std::string_view kinds[] = {"", "subtotal", "total"};
        std::string const kind(kinds[static_cast<std::size_t>(row.kind)]);
        text_ += kind.empty() ? "<tr>" : fmt::format("<tr class=\"{}{}\">", kind, more);
        std::size_t const empty = gap(table, row);
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            if (i > 0 && i <= empty) continue;
            if (i >= row.cells.size()) {
                text_ += "<td></td>";
                continue;
            }
            if (table.columns[i].is_bar) {
                text_ += "<td class=\"bar\">" + bar(row.cells[i], most[i]) + "</td>";
                continue;
            }
            bool const is_words = table.columns[i].is_words;
            bool const is_head = i == 0 && is_words;
            text_ += is_head ? "<th scope=\"row\"" : "<td";
            if (is_head && empty > 0)
                text_ += fmt::format(" colspan=\"{}\" class=\"sum\"", empty + 1);
            else if (is_words)
                text_ += " class=\"w\"";
            text_ += '>' + escaped(text_drawing_detail::shown(row.cells[i], style_)) +
                     (is_head ? "</th>" : "</td>");
        }
        text_ += "</tr>\n";
    }

    std::string& text_;
    Style const& style_;
    std::string heading_; ///< the last one
    int number_ = 0;
    bool is_first_ = true;
};

} // namespace html_detail

GROAT_INLINE std::string to_html(Sheet const& sheet) {
    using html_detail::escaped;
    Logo const& logo = sheet.look.logo;
    std::string text;
    text.reserve(logo.base64.view().size() + (std::size_t{1} << 16));
    text += "<!DOCTYPE html>\n<html lang=\"" + escaped(sheet.language) +
            "\">\n<head>\n<meta charset=\"utf-8\">\n"
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
            "'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\">\n"
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            "<meta name=\"referrer\" content=\"no-referrer\">\n";
    std::string const shop = sheet.letterhead.empty() ? std::string() : sheet.letterhead.front();
    text += "<title>" + escaped(sheet.title) + "</title>\n<style>";
    text += style_sheet(sheet.look, shop.empty() ? sheet.title : shop + " · " + sheet.title);
    text += "</style>\n</head>\n<body class=\"" + escaped(sheet.kind) + "\">\n";
    if (!sheet.letterhead.empty()) {
        text += "<header>\n";
        if (logo.is_there()) {
            text += "<img src=\"data:" + logo.media_type + ";base64,";
            text += logo.base64.view();
            text += "\" alt=\"" + escaped(shop) + "\">\n";
        }
        text += "<div>\n";
        for (std::string const& line : sheet.letterhead) text += "<p>" + escaped(line) + "</p>\n";
        text += "</div>\n</header>\n";
    }
    text += "<main>\n<h1>" + escaped(sheet.title) + "</h1>\n";
    html_detail::Drawing drawing(text, sheet);
    for (Section const& section : sheet.sections) std::visit(drawing, section);
    text += "</main>\n</body>\n</html>\n";
    return text;
}

} // namespace groat
