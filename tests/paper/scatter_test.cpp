#include <groat/base/text.hpp>
#include <groat/paper/scatter.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Chart plane(std::vector<ChartPoint> points) {
    Chart chart;
    chart.across = {
        "", {{0, "0 %"}, {number("0.5"), "50 %"}}, ChartLine{number("0.25"), "25 %", ""}};
    chart.up = {"", {{1, "1"}, {6, "6"}}, ChartLine{number("3"), "3", ""}};
    chart.series = {{"", std::move(points)}};
    chart.corners = {"above left", "above right", "below left", "below right"};
    chart.is_lettered = true;
    return chart;
}

/// Where a label stands: the number of its line from above and its column, both from 0.
struct Place {
    int line = -1;
    int column = -1;
};
Place place_of(std::vector<std::string> const& lines, std::string_view label) {
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (std::size_t const at = lines[i].find(label); at != std::string::npos)
            return {static_cast<int>(i), static_cast<int>(display_width(lines[i].substr(0, at)))};
    return {};
}

} // namespace

TEST_CASE("each point stands on its true side of both lines") {
    auto const lines = lettered(plane({{number("0.1"), number("5"), "A"},
                                       {number("0.4"), number("5"), "B"},
                                       {number("0.1"), number("2"), "C"},
                                       {number("0.4"), number("2"), "D"}}));
    Place const cross = place_of(lines, "┼");
    CHECK(place_of(lines, "A").line < cross.line);
    CHECK(place_of(lines, "A").column < cross.column);
    CHECK(place_of(lines, "B").line < cross.line);
    CHECK(place_of(lines, "B").column > cross.column);
    CHECK(place_of(lines, "C").line > cross.line);
    CHECK(place_of(lines, "C").column < cross.column);
    CHECK(place_of(lines, "D").line > cross.line);
    CHECK(place_of(lines, "D").column > cross.column);
}

TEST_CASE("a point at a line is above it and to its right, one a hair below is not") {
    Number const hair = Number(1) / 1'000'000'000;
    auto const at = lettered(plane({{number("0.25"), number("3"), "A"},
                                    {number("0.5"), number("6"), "Z"},
                                    {number("0.25") - hair, number("3") - hair, "B"},
                                    {0, number("1"), "Y"}}));
    Place const cross = place_of(at, "┼");
    CHECK(place_of(at, "A").line == cross.line - 1);
    CHECK(place_of(at, "A").column == cross.column + 1);
    CHECK(place_of(at, "B").line == cross.line + 1);
    CHECK(place_of(at, "B").column == cross.column - 1);
    // the greatest and the least stand at the ends
    CHECK(place_of(at, "Z").line == 1);
    CHECK(place_of(at, "Z").column == 69);
    CHECK(place_of(at, "Y").line == 19);
    CHECK(place_of(at, "Y").column == 2);
}

TEST_CASE("the lines are no wider than a page, and say what stands at their ends") {
    auto const lines =
        lettered(plane({{number("0.1"), number("5"), "1"}, {number("0.5"), number("6"), "99"}}));
    for (std::string const& line : lines) CHECK(display_width(line) <= 80);
    CHECK(says(lines.front(), "above left"));
    CHECK(says(lines.front(), "above right"));
    CHECK(says(lines.back(), "below left"));
    CHECK(says(lines.back(), "below right"));
    CHECK(says(lines[lines.size() - 2], "0 %"));
    CHECK(says(lines[lines.size() - 2], "25 %"));
    CHECK(says(lines[lines.size() - 2], "50 %"));
    CHECK(lines[1].starts_with("6 "));
    CHECK(lines[19].starts_with("1 "));
}

TEST_CASE("what has no room at its place is told below") {
    auto const lines = lettered(plane({{number("0.4"), number("5"), "7"},
                                       {number("0.4"), number("5"), "12"},
                                       {number("0.4"), number("5"), "13"}}));
    CHECK(lines.back() == "At the place of 7 also: 12, 13");
}

TEST_CASE("a number of two digits is never cut by a line or by the edge") {
    auto const lines = lettered(
        plane({{number("0.2499"), number("5"), "12"}, {number("0.5"), number("2"), "34"}}));
    CHECK(place_of(lines, "12│").line > 0);
    CHECK(place_of(lines, "34").column == 68);
}

TEST_CASE("one point alone, and many at the same height, can be drawn") {
    Chart alone = plane({{1, number("3"), "1"}});
    alone.across.line->at = number("0.7");
    CHECK(place_of(lettered(alone), "1").line >= 0);
    Chart flat = plane({{number("0.5"), number("3"), "A"}, {number("0.5"), number("3"), "B"}});
    CHECK(lettered(flat).back() == "At the place of A also: B");
    Chart nothing = plane({});
    CHECK(lettered(nothing).size() == 22);
}

TEST_CASE("points without labels are dots, and dots at one place are one") {
    auto const lines =
        lettered(plane({{number("0.4"), number("5")}, {number("0.4"), number("5")}}));
    CHECK(place_of(lines, "•").line >= 0);
    CHECK(lines.back() == lettered(plane({})).back());
}

TEST_CASE("words that mean harm become harmless in letters, too") {
    auto const lines = lettered(plane({{number("0.4"), number("5"), "\x1B[31m1"}}));
    for (std::string const& line : lines) CHECK(line.find('\x1B') == std::string::npos);
}

TEST_CASE("a chart without its lines, or of several series, is not set in letters") {
    Chart chart = plane({{number("0.4"), number("5"), "1"}});
    chart.is_lettered = false;
    CHECK_THROWS_AS((void)lettered(chart), std::logic_error);
    chart = plane({});
    chart.up.line.reset();
    CHECK_THROWS_AS((void)lettered(chart), std::logic_error);
    chart = plane({});
    chart.series.push_back({"second", {}});
    CHECK_THROWS_AS((void)lettered(chart), std::logic_error);
}
