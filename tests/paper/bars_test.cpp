#include <groat/paper/bars.hpp>

#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/text.hpp>

#include <doctest/doctest.h>

using namespace groat;

namespace {

Figure figure(int value) { return {std::to_string(value) + ".00", Number(value), "USD"}; }

Sheet sheet_with_bars() {
    Sheet sheet{"x", "maker", {}, "title", {}};
    sheet.sections.emplace_back(
        Table{"t",
              "",
              {{"item", "", true}, {"cost", "Cost"}, {"bar", "", false, true}},
              {{"1", {"flour", figure(40), figure(40)}},
               {"2", {"butter", figure(10), figure(10)}},
               {"3", {"credit", figure(-5), figure(-5)}},
               {"total", {"all", figure(45), figure(45)}, Row::Kind::total}},
              {}});
    return sheet;
}

} // namespace

TEST_CASE("the greatest of a column is a line of it, not the total") {
    Sheet const sheet = sheet_with_bars();
    CHECK((greatest(std::get<Table>(sheet.sections[0]), 2) == Number(40)));
}

TEST_CASE("a bar is a part of the longest, and nothing has none") {
    CHECK((bar_length(figure(10), 40) == Number(1) / 4));
    CHECK((bar_length(figure(40), 40) == Number(1)));
    CHECK(bar_length(figure(-5), 40).is_zero());
    CHECK(bar_length(figure(10), 0).is_zero());
    CHECK(bar_length(std::string("words"), 40).is_zero());
}

TEST_CASE("text draws a bar of squares") {
    std::string const text = to_text(sheet_with_bars());
    CHECK(text.find("40.00  ▪▪▪▪▪▪▪▪▪▪▪▪▪▪▪▪▪▪▪▪\n") != std::string::npos);
    CHECK(text.find("10.00  ▪▪▪▪▪\n") != std::string::npos);
    CHECK(text.find("-5.00\n") != std::string::npos);
}

TEST_CASE("a page draws a picture with its figure as words") {
    std::string const page = to_html(sheet_with_bars());
    CHECK(page.find("role=\"img\" aria-label=\"40.00\"><rect width=\"100\"") != std::string::npos);
    CHECK(page.find("aria-label=\"10.00\"><rect width=\"25\"") != std::string::npos);
    CHECK(page.find("aria-label=\"-5.00\"") == std::string::npos);
}

TEST_CASE("forms that draw nothing leave the column out") {
    CHECK(to_csv(sheet_with_bars()).find("flour,40.00\r\n") != std::string::npos);
    CHECK(to_markdown(sheet_with_bars()).find("| flour | 40.00 |\n") != std::string::npos);
    CHECK(to_json(sheet_with_bars()).find("\"bar\"") == std::string::npos);
}

TEST_CASE("the greatest of each column of bars is known, and of no other") {
    Sheet const sheet = sheet_with_bars();
    std::vector<Number> const all = greatest_bars(std::get<Table>(sheet.sections[0]));
    REQUIRE(all.size() == 3);
    CHECK(all[0].is_zero());
    CHECK(all[1].is_zero());
    CHECK((all[2] == Number(40)));
}
