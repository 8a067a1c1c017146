#include <groat/paper/html.hpp>

#include "hostile_sheet.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace groat;
using namespace groat::test;

namespace {

std::size_t count(std::string_view text, std::string_view part) {
    std::size_t found = 0;
    for (std::size_t at = text.find(part); at != std::string_view::npos;
         at = text.find(part, at + part.size()))
        ++found;
    return found;
}

/// Every element that is opened is closed in order; those without content apart.
bool is_balanced(std::string_view page) {
    std::vector<std::string> open;
    for (std::size_t at = page.find('<'); at != std::string_view::npos;
         at = page.find('<', at + 1)) {
        std::size_t const end = page.find_first_of(" >", at);
        std::string name(page.substr(at + 1, end - at - 1));
        if (name == "!DOCTYPE" || name == "meta" || name == "img") continue;
        if (page[page.find('>', at) - 1] == '/') continue;
        if (!name.starts_with('/')) {
            open.push_back(name);
        } else {
            if (open.empty() || "/" + open.back() != name) return false;
            open.pop_back();
        }
    }
    return open.empty();
}

/// What stands between the quotation marks of an attribute, wherever it stands.
std::vector<std::string> values(std::string_view page, std::string const& attribute) {
    std::vector<std::string> found;
    std::string const begin = ' ' + attribute + "=\"";
    for (std::size_t at = page.find(begin); at != std::string_view::npos;
         at = page.find(begin, at + 1)) {
        std::size_t const from = at + begin.size();
        found.emplace_back(page.substr(from, page.find('"', from) - from));
    }
    return found;
}

/// With a logo, of which only its letters matter here.
Sheet with_logo(Sheet sheet) {
    sheet.look.logo.media_type = "image/png";
    sheet.look.logo.base64 = std::string("iVBORw0KGgo=");
    return sheet;
}

} // namespace

TEST_CASE("a page is whole: every element closed, one heading of the first rank") {
    std::string const page = to_html(sheet_of("plain words"));
    CHECK(page.starts_with("<!DOCTYPE html>"));
    CHECK(is_balanced(page));
    CHECK(count(page, "<h1>") == 1);
    CHECK(count(page, "lang=\"en\"") == 1);
}

TEST_CASE("hostile words stay words") {
    std::string const page = to_html(sheet_of(hostile));
    CHECK(is_balanced(page));
    CHECK(count(page, "<script") == 0);
    CHECK(count(page, "\x1B") == 0);
    CHECK(count(page, "\u202E") == 0);
    CHECK(count(page, "&lt;script&gt;") > 5);
}

TEST_CASE("nothing is fetched and no script may run") {
    std::string const page = to_html(sheet_of("plain words"));
    CHECK(count(page, "default-src 'none'") == 1);
    CHECK(count(page, "http:") + count(page, "https:") + count(page, "url(") +
              count(page, "@import") ==
          0);
    CHECK(count(page, " on") == 0); // no onclick and the like: no such word stands in it
}

TEST_CASE("heads of tables say what they are heads of") {
    std::string const page = to_html(sheet_of("words"));
    CHECK(count(page, "<th") == 5); // thead among them
    CHECK(count(page, "<th scope=\"col\"") == 2);
    CHECK(count(page, "<th scope=\"row\"") == 2);
    CHECK(count(page, "<tr class=\"total\">") == 1);
    CHECK(count(page, "<td>35.2 %</td>") == 1);
    CHECK(count(page, "<dd>1.50 USD</dd>") == 1);
}

TEST_CASE("ten thousand letters without a blank are still one word in one cell") {
    std::string const page = to_html(sheet_of(std::string(10'000, 'x')));
    CHECK(is_balanced(page));
    CHECK(count(page, std::string(10'000, 'x')) >= 8);
}

TEST_CASE("every picture has a name, and every id is its own") {
    Sheet sheet = sheet_of("words");
    sheet.sections.push_back(sheet.sections.back()); // a second chart
    std::string const page = to_html(sheet);
    CHECK(count(page, "<svg") == 2);
    CHECK(count(page,
                "<svg class=\"chart\" viewBox=\"0 0 560 360\" role=\"img\" aria-labelledby=") == 2);
    std::vector<std::string> ids = values(page, "id");
    CHECK(ids.size() == 4);
    for (std::string const& named : values(page, "aria-labelledby")) {
        std::size_t const gap = named.find(' ');
        CHECK(count(page, "<title id=\"" + named.substr(0, gap) + "\">words</title>") == 1);
        CHECK(count(page, "<desc id=\"" + named.substr(gap + 1) + "\">words</desc>") == 1);
    }
    std::sort(ids.begin(), ids.end());
    CHECK(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
}

TEST_CASE("what may be too wide is reached by keys and has a name") {
    std::string const page = to_html(sheet_of("words"));
    // the chart; a table of two columns wraps
    CHECK(count(page, "<div class=\"wide\"") == 1);
    CHECK(count(page, "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"words\">") ==
          1);
}

TEST_CASE("the logo stands in the page under the shop's name, and only where there is one") {
    std::string const page = to_html(with_logo(sheet_of("words")));
    CHECK(is_balanced(page));
    CHECK(count(page, "<img src=\"data:image/png;base64,iVBORw0KGgo=\" alt=\"words\">") == 1);
    CHECK(count(to_html(sheet_of("words")), "<img") == 0);
    std::string const harm = to_html(with_logo(sheet_of("\" onerror=\"alert(1)")));
    CHECK(count(harm, "alt=\"&quot; onerror=&quot;alert(1)\"") == 1);
}

TEST_CASE("the shop's colours are those of its pages") {
    Sheet sheet = sheet_of("words");
    CHECK(count(to_html(sheet), ":root{--ink:#22242a;--mark:#5a3a1b;") == 1);
    sheet.look.mark = *parse_colour("#036");
    sheet.look.ink = *parse_colour("#000");
    CHECK(count(to_html(sheet), ":root{--ink:#000000;--mark:#003366;") == 1);
}

TEST_CASE("the foot of printed pages names shop and sheet, and cannot leave its quotation marks") {
    std::string const page = to_html(sheet_of("Tart & \"Co\"}</style>"));
    CHECK(is_balanced(page));
    CHECK(count(page, "</style>") == 1);
    std::string const foot = "Tart \\26  \\22 Co\\22 \\7d \\3c \\2f style\\3e ";
    CHECK(count(page, "@bottom-left{content:\"" + foot + " · " + foot + "\";") == 1);
}

TEST_CASE(
    "the end of an addition of several steps is marked, and totals that stand alone are not") {
    auto const amount = [](int value) {
        return Figure{std::to_string(value), Number(value), "USD"};
    };
    using Kind = Row::Kind;
    Table table{"t", "", {{"what", "", true}, {"amount", ""}}, {}, {}};
    table.rows = {{"1", {"a", amount(3)}},
                  {"2", {"sum", amount(3)}, Kind::total},
                  {"3", {"tax", amount(1)}, Kind::subtotal},
                  {"4", {"total", amount(4)}, Kind::total},
                  {"5", {"deposit", amount(2)}, Kind::subtotal}};
    Sheet sheet{"x", "maker", {}, "title", {table}};
    CHECK(count(to_html(sheet),
                "<tr class=\"total last\"><th scope=\"row\" class=\"w\">total</th>") == 1);
    CHECK(count(to_html(sheet), "total last") == 1);
    table.rows[3].cells[1] = amount(1); // a sum of its own
    sheet.sections = {table};
    CHECK(count(to_html(sheet), "total last") == 0);
    table.rows.erase(table.rows.begin() + 2,
                     table.rows.end()); // the only one, and nothing after it
    sheet.sections = {table};
    CHECK(count(to_html(sheet), "total last") == 0);
    table.rows.push_back({"5", {"deposit", amount(2)}, Kind::subtotal});
    sheet.sections = {table};
    CHECK(count(to_html(sheet), "total last") == 1);
}

TEST_CASE("the words of a sum stand beside their figure") {
    Table table{"t",
                "",
                {{"item", "", true}, {"count", "Count"}, {"each", "Each"}, {"amount", "Amount"}},
                {{"1", {"bun", std::string("2"), std::string("3"), std::string("6")}},
                 {"total", {"Total", {}, {}, std::string("6")}, Row::Kind::total}},
                {}};
    std::string const page = to_html({"x", "maker", {}, "title", {table}});
    CHECK(count(page, "<tr class=\"total\"><th scope=\"row\" colspan=\"3\" class=\"sum\">Total</th>"
                      "<td>6</td></tr>") == 1);
    CHECK(count(page, "<td></td><th scope=\"col\">Count</th>") == 1); // no head without words
}

TEST_CASE("a table without rows is not there; one with a remark says only that") {
    Table table{"t", "Lines", {{"item", "Item", true}, {"amount", "Amount"}}, {}, "Said below."};
    std::string page = to_html({"x", "maker", {}, "Title", {table}});
    CHECK(is_balanced(page));
    CHECK(count(page, "<h2>Lines</h2>") == 1);
    CHECK(count(page, "<p class=\"note\">Said below.</p>") == 1);
    CHECK(count(page, "<table") + count(page, "Amount") == 0);
    table.remark.clear();
    page = to_html({"x", "maker", {}, "Title", {table}});
    CHECK(count(page, "<section") + count(page, "Lines") == 0);
}

TEST_CASE("copies of a sheet share the letters of the logo") {
    Sheet const sheet = with_logo(sheet_of("words"));
    Sheet const copy = sheet;
    CHECK(copy.look.logo.base64.view().data() == sheet.look.logo.base64.view().data());
    CHECK(to_html(copy) == to_html(sheet));
    CHECK_FALSE(Logo{}.is_there());
}

TEST_CASE("a table wider than paper is set smaller there, and no other") {
    auto const page = [](std::string const& figure) {
        Table table{"t", "", {{"item", "", true}}, {}, {}};
        std::vector<Cell> cells{std::string("flour")};
        for (int i = 0; i < 7; ++i) {
            table.columns.push_back({"amount", "Amount"});
            cells.emplace_back(Figure{figure, Number(1), "USD"});
        }
        table.rows.push_back({"1", cells});
        Sheet sheet{"x", "maker", {}, "title", {}};
        sheet.sections.emplace_back(std::move(table));
        return to_html(sheet);
    };
    CHECK(page("12.50").find("--fit:") == std::string::npos);
    // 7 + 7 * (18 + 2) = 147 figures where a page has room for 84
    CHECK(page("123456789012345.00").find("<table style=\"--fit:57%\">") != std::string::npos);
}
