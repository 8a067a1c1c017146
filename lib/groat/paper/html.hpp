/// A sheet as one page that needs nothing from outside: no script, no font, no picture is fetched. It reads on a
/// phone and prints on A4 and Letter with the heads of tables repeated.
#pragma once

#include <groat/paper/text.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// A whole document: the letterhead and title as its header, each section under a heading of its own, tables
/// with the scope of their heads. Text from outside is escaped everywhere.
[[nodiscard]] std::string to_html(Sheet const& sheet);

// ---------------------------------------------------------------------------------------------------

namespace html_drawing {

inline std::string escaped(std::string_view text) {
    std::string result;
    for (char const c : printable(text)) {
        switch (c) {
        case '<': result += "&lt;"; break;
        case '>': result += "&gt;"; break;
        case '&': result += "&amp;"; break;
        case '"': result += "&quot;"; break;
        case '\'': result += "&#39;"; break;
        default: result += c;
        }
    }
    return result;
}

/// Ink on paper, one quiet colour; all contrasts are above 7 : 1.
inline constexpr std::string_view style = R"(
:root{--ink:#22242a;--soft:#4c505a;--line:#c9c3b6;--mark:#5a3a1b}
*{box-sizing:border-box}
body{margin:0 auto;max-width:52rem;padding:2rem 1.25rem 3rem;color:var(--ink);background:#fff;
font:1rem/1.5 Georgia,"Liberation Serif","Times New Roman",serif;font-variant-numeric:tabular-nums}
header p{margin:0;color:var(--soft)}
header p:first-child{font-weight:bold;color:var(--mark);font-size:1.15rem;letter-spacing:.02em}
h1{margin:1.6rem 0 .4rem;padding-bottom:.4rem;border-bottom:2px solid var(--mark);font-size:1.7rem;
font-weight:normal;line-height:1.2}
h2{margin:2rem 0 .5rem;font-size:1.1rem;font-weight:bold;color:var(--mark)}
section{break-inside:auto}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1.25rem;margin:1rem 0}
dt{color:var(--soft)}
dd{margin:0;overflow-wrap:anywhere}
.wide{overflow-x:auto}
table{width:100%;border-collapse:collapse}
th,td{padding:.3rem 0 .3rem .9rem;text-align:right;vertical-align:top}
th:first-child,td:first-child{padding-left:0}
td{white-space:nowrap}
.w{min-width:7rem;text-align:left;white-space:normal;overflow-wrap:break-word}
thead th{border-bottom:1px solid var(--ink);font-weight:normal;color:var(--soft);vertical-align:bottom}
tbody th{font-weight:normal}
tbody td,tbody th{border-bottom:1px solid var(--line)}
.bar{width:26%;min-width:5rem}
.bar svg{display:block;width:100%;height:.7rem;margin-top:.4rem;fill:var(--mark)}
tr.total>*{border-top:2px solid var(--ink);border-bottom:0;font-weight:bold}
tr.subtotal>*{border-bottom:0}
.note{margin:.4rem 0 0;color:var(--soft);font-size:.92rem}
section>p{margin:.4rem 0}
pre{margin:.4rem 0;font:.8rem/1.2 "Liberation Mono",Menlo,Consolas,monospace}
@media (max-width:30rem){body{padding:1rem .75rem 2rem;font-size:.95rem}h1{font-size:1.35rem}
dl{grid-template-columns:1fr}dd{margin-bottom:.4rem}th,td{padding-left:.5rem}}
@page{margin:18mm 16mm;@bottom-right{content:counter(page) " / " counter(pages)}}
@media print{body{max-width:none;padding:0;font-size:10.5pt}.wide{overflow:visible}
thead{display:table-header-group}tr,dl>div{break-inside:avoid}h1,h2{break-after:avoid}
tr.total{break-before:avoid}}
)";

struct Drawing {
    std::string& text;
    Style const& figures;

    void heading(std::string const& title) const {
        text += "<section>\n";
        if (!title.empty()) text += "<h2>" + escaped(title) + "</h2>\n";
    }
    void operator()(Facts const& facts) const {
        if (facts.facts.empty()) return;
        heading(facts.title);
        text += "<dl>\n";
        for (Fact const& fact : facts.facts)
            text += "<dt>" + escaped(fact.label) + "</dt><dd>" +
                    escaped(text_drawing::shown_alone(fact.value, figures)) + "</dd>\n";
        text += "</dl>\n</section>\n";
    }
    void operator()(Table const& table) const {
        if (table.columns.empty()) return;
        heading(table.title);
        text += "<div class=\"wide\"><table>\n";
        bool has_titles = false;
        for (Column const& column : table.columns) has_titles = has_titles || !column.title.empty();
        if (has_titles) {
            text += "<thead><tr>";
            for (Column const& column : table.columns)
                text += std::string("<th scope=\"col\"") + (column.is_words ? " class=\"w\"" : "") +
                        ">" + escaped(column.title) + "</th>";
            text += "</tr></thead>\n";
        }
        text += "<tbody>\n";
        for (Row const& row : table.rows) put(table, row);
        text += "</tbody></table></div>\n";
        if (!table.remark.empty()) text += "<p class=\"note\">" + escaped(table.remark) + "</p>\n";
        text += "</section>\n";
    }
    void operator()(Remarks const& remarks) const {
        if (remarks.lines.empty()) return;
        heading(remarks.title);
        if (remarks.is_drawn) {
            text += "<div class=\"wide\"><pre>";
            for (std::string const& line : remarks.lines) text += escaped(line) + '\n';
            text += "</pre></div>\n</section>\n";
            return;
        }
        for (std::string const& line : remarks.lines) text += "<p>" + escaped(line) + "</p>\n";
        text += "</section>\n";
    }

private:
    /// A picture of nothing but its length; what it says stands in words in the same row.
    std::string bar(Cell const& cell, Number const& most) const {
        Number const length = bar_length(cell, most);
        if (length.is_zero()) return {};
        return "<svg viewBox=\"0 0 100 10\" preserveAspectRatio=\"none\" role=\"img\" aria-label=\"" +
               escaped(text_drawing::shown(cell, figures)) + "\"><rect width=\"" +
               decimal_at_most(length * 100, 2) + "\" height=\"10\"/></svg>";
    }

    /// The first words of a row are its head.
    void put(Table const& table, Row const& row) const {
        constexpr std::string_view kinds[] = {"", " class=\"subtotal\"", " class=\"total\""};
        text += "<tr";
        text += kinds[static_cast<std::size_t>(row.kind)];
        text += '>';
        for (std::size_t i = 0; i < table.columns.size() && i < row.cells.size(); ++i) {
            if (table.columns[i].is_bar) {
                text += "<td class=\"bar\">" + bar(row.cells[i], greatest(table, i)) + "</td>";
                continue;
            }
            bool const is_words = table.columns[i].is_words;
            bool const is_head = i == 0 && is_words;
            text += is_head ? "<th scope=\"row\"" : "<td";
            if (is_words) text += " class=\"w\"";
            text += '>' + escaped(text_drawing::shown(row.cells[i], figures)) +
                    (is_head ? "</th>" : "</td>");
        }
        text += "</tr>\n";
    }
};

} // namespace html_drawing

inline std::string to_html(Sheet const& sheet) {
    using html_drawing::escaped;
    std::string text =
        "<!DOCTYPE html>\n<html lang=\"" + escaped(sheet.language) +
        "\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
        "'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\">\n"
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        "<meta name=\"referrer\" content=\"no-referrer\">\n";
    text += "<title>" + escaped(sheet.title) + "</title>\n<style>";
    text += html_drawing::style;
    text += "</style>\n</head>\n<body>\n<header>\n";
    for (std::string const& line : sheet.letterhead) text += "<p>" + escaped(line) + "</p>\n";
    text += "</header>\n<main>\n<h1>" + escaped(sheet.title) + "</h1>\n";
    for (Section const& section : sheet.sections)
        std::visit(html_drawing::Drawing{text, sheet.style}, section);
    return text + "</main>\n</body>\n</html>\n";
}

} // namespace groat
