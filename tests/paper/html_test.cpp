#include <groat/paper/html.hpp>

#include "hostile_sheet.hpp"

#include <doctest/doctest.h>

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
        if (name == "!DOCTYPE" || name == "meta") continue;
        if (!name.starts_with('/')) {
            open.push_back(name);
        } else {
            if (open.empty() || "/" + open.back() != name) return false;
            open.pop_back();
        }
    }
    return open.empty();
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
