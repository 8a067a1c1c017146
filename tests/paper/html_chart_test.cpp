#include <groat/paper/html_chart.hpp>

#include "books.hpp"

#include <map>

using namespace groat;
using namespace groat::test;

namespace {

Chart line_chart(std::vector<ChartPoint> points) {
    return {"c",
            "",
            {"Count", {{0, "0"}, {100, "100"}}},
            {"USD", {{0, "0"}, {10, "10"}}},
            {{"Price", std::move(points), true}}};
}

std::vector<std::string> all_of(std::string const& text, std::string_view begin,
                                std::string_view end) {
    std::vector<std::string> found;
    for (std::size_t at = text.find(begin); at != std::string::npos;
         at = text.find(begin, at + 1)) {
        std::size_t const from = at + begin.size();
        found.push_back(text.substr(from, text.find(end, from) - from));
    }
    return found;
}

/// The words of a picture with the place they stand at, in tenths.
struct Set {
    int x;
    int y;
    std::string anchor;
    std::string words;
};
int tenths(std::string const& text) {
    return static_cast<int>(steps(number(text), Number(1) / 10, Tie::down));
}
std::vector<Set> words_of(std::string const& svg) {
    std::vector<Set> found;
    for (std::string const& each : all_of(svg, "<text ", "</text>")) {
        auto const value = [&](std::string const& name, std::string const& usual) {
            std::size_t const at = each.find(name + "=\"");
            if (at == std::string::npos) return usual;
            std::size_t const from = at + name.size() + 2;
            return each.substr(from, each.find('"', from) - from);
        };
        found.push_back({tenths(value("x", "0")), tenths(value("y", "0")),
                         value("text-anchor", "start"), each.substr(each.rfind('>') + 1)});
    }
    return found;
}

/// Where the words of a picture stand at most, in tenths.
html_chart_detail::Box box_of(Set const& each) {
    int const wide = html_chart_detail::text_width(each.words);
    int const left = each.anchor == "start"    ? each.x
                     : each.anchor == "middle" ? each.x - wide / 2
                                               : each.x - wide;
    return {left, each.y - 100, left + wide, each.y};
}

/// The place of a picture itself.
html_chart_detail::Box frame_of(std::string const& svg) {
    std::string const size = all_of(svg, "viewBox=\"0 0 ", "\"").at(0);
    std::size_t const gap = size.find(' ');
    return {0, 0, tenths(size.substr(0, gap)), tenths(size.substr(gap + 1))};
}

/// A series for each name; all end low.
Chart chart_of(std::vector<std::string> const& names) {
    Chart chart = line_chart({});
    chart.series.clear();
    int end = 0;
    for (std::string const& name : names)
        chart.series.push_back({name, {{0, 9, ""}, {100, Number(end++) / 10, ""}}, true});
    return chart;
}

std::size_t count(std::string const& text, std::string_view part) {
    return all_of(text, part, "").size();
}

} // namespace

TEST_CASE("points stand where the scales say") {
    std::string const svg =
        to_svg(line_chart({{0, 0, ""}, {25, 5, ""}, {50, 10, ""}, {100, 0, ""}}), "Prices", "s1");
    auto const xs = all_of(svg, "<circle cx=\"", "\"");
    auto const ys = all_of(svg, "cy=\"", "\"");
    REQUIRE(xs.size() == 4);
    int const width = tenths(xs[3]) - tenths(xs[0]);
    int const height = tenths(ys[0]) - tenths(ys[2]); // up is less
    CHECK(width > 2000);
    CHECK(height > 1000);
    CHECK(std::abs(4 * (tenths(xs[1]) - tenths(xs[0])) - width) <= 4);
    CHECK(std::abs(2 * (tenths(xs[2]) - tenths(xs[0])) - width) <= 2);
    CHECK(std::abs(2 * (tenths(ys[0]) - tenths(ys[1])) - height) <= 2);
    CHECK(ys[3] == ys[0]);
    CHECK(count(svg, "class=\"way way0\"") == 1);
}

TEST_CASE("a picture says its name, and what one sees in it") {
    Chart chart = line_chart({{0, 0, ""}, {100, 5, ""}});
    std::string svg = to_svg(chart, "Prices & \"more\"", "s7");
    CHECK(says(svg, "role=\"img\" aria-labelledby=\"s7-t\">"));
    CHECK(says(svg, "<title id=\"s7-t\">Prices &amp; &quot;more&quot;</title>"));
    CHECK(!says(svg, "<desc"));
    chart.said = "It rises <b>.";
    svg = to_svg(chart, "Prices", "s7");
    CHECK(says(svg, "aria-labelledby=\"s7-t s7-d\""));
    CHECK(says(svg, "<desc id=\"s7-d\">It rises &lt;b&gt;.</desc>"));
}

TEST_CASE("several series differ by shape and stroke and are named at their ends") {
    Chart chart = line_chart({{0, 2, "2"}, {100, 8, "8"}});
    chart.series.push_back({"Cost", {{0, 1, "1"}, {100, 7, "7"}}, true});
    chart.series.push_back({"Third of the <all>", {{0, 1, ""}, {100, 7, ""}}, true});
    std::string const svg = to_svg(chart, "Prices", "s1");
    CHECK(count(svg, "<circle") == 2);
    CHECK(count(svg, "class=\"hollow\"") == 2);
    for (char const* way : {"way way0", "way way1", "way way2"}) CHECK(count(svg, way) == 1);
    std::map<std::string, int> names;
    for (Set const& each : words_of(svg)) names.emplace(each.words, each.y);
    CHECK(names.contains("Price"));
    CHECK(names.contains("Third of the"));
    CHECK(says(svg, "&lt;all&gt;"));
    // two that end at one place are set below one another
    CHECK(std::abs(names.at("Third of the") - names.at("Cost")) >= html_chart_detail::line_height);
}

TEST_CASE("the labels of a crowd do not cover each other, nor a point") {
    // a lattice of 45 points, 9 across and 5 up
    Chart chart = line_chart({});
    chart.corners = {"a", "b", "c", "d"};
    chart.series = {{"", {}}};
    for (int i = 0; i < 45; ++i)
        chart.series[0].points.push_back(
            {Number(i % 9) * 100 / 8, Number(i / 9) * 10 / 4, std::to_string(i + 1)});
    std::string const svg = to_svg(chart, "Crowd", "s1");
    auto const xs = all_of(svg, "<circle cx=\"", "\"");
    auto const ys = all_of(svg, "cy=\"", "\"");
    REQUIRE(xs.size() == 45);
    std::vector<html_chart_detail::Box> boxes;
    for (std::size_t i = 0; i < xs.size(); ++i)
        boxes.push_back(
            {tenths(xs[i]) - 40, tenths(ys[i]) - 40, tenths(xs[i]) + 40, tenths(ys[i]) + 40});
    std::size_t labels = 0;
    for (Set const& each : words_of(svg)) {
        if (each.anchor != "middle" ||
            each.words.find_first_not_of("0123456789") != each.words.npos)
            continue;
        if (each.y > tenths(ys[0]) + 300) continue; // a figure of the axis
        int const half = html_chart_detail::text_width(each.words) / 2;
        html_chart_detail::Box const box{each.x - half, each.y - 100, each.x + half, each.y + 10};
        for (html_chart_detail::Box const& other : boxes) CHECK_FALSE(box.meets(other));
        boxes.push_back(box);
        ++labels;
    }
    CHECK(labels == 45);
}

TEST_CASE("all words stand within the picture, and figures of the axis do not touch") {
    Chart chart = line_chart({{1, 9, "9.00"}, {100, 1, "1.00"}});
    chart.across.ticks = {{1, "1"}, {2, "2"}, {10, "10"}, {50, "50"}, {99, "99"}, {100, "100"}};
    chart.across.line = ChartLine{2, "2", "a rather long line of words"};
    std::string const svg = to_svg(chart, "Prices", "s1");
    int before = -1000;
    std::vector<std::string> ticks;
    for (Set const& each : words_of(svg)) {
        html_chart_detail::Box const box = box_of(each);
        CHECK(frame_of(svg).holds(box));
        if (each.y < html_chart_detail::line_size.height - 400 || each.words == "Count") continue;
        ticks.push_back(each.words);
        CHECK(box.left > before);
        before = box.right;
    }
    CHECK(ticks == std::vector<std::string>{"1", "10", "50", "100"});
}

TEST_CASE("one point, none, and values outside of the axes can be drawn") {
    Chart chart = line_chart({{5, 5, "x"}});
    chart.across.ticks = {{5, "5"}};
    chart.up.ticks = {};
    CHECK(count(to_svg(chart, "One", "s1"), "<circle") == 1);
    CHECK(count(to_svg(line_chart({}), "None", "s1"), "<circle") == 0);
    auto const ys =
        all_of(to_svg(line_chart({{0, -5, ""}, {100, 0, ""}}), "Low", "s1"), "cy=\"", "\"");
    CHECK(ys.at(0) == ys.at(1));
}

TEST_CASE("names of series that end at one place stand within the picture, apart from each other") {
    std::string const some_words = "Rye plum sandwich with cardamom, box of twelve";
    for (auto const& names :
         {std::vector<std::string>{"Tart", "Bun", "Roll", "Cake"},
          std::vector<std::string>(4, some_words),
          std::vector<std::string>(4, std::string(200, 'x')),
          std::vector<std::string>{"月餅月餅月餅月餅月餅月餅月餅月餅月餅月餅月餅", "a", "b", "c"},
          std::vector<std::string>(4, some_words + ' ' + some_words + ' ' + some_words)}) {
        CAPTURE(names.front());
        Chart chart = chart_of(names);
        chart.up.line = ChartLine{0, "0", "sells from nothing at all"};
        std::string const svg = to_svg(chart, "Prices", "s1");
        html_chart_detail::Box const frame = frame_of(svg);
        std::vector<html_chart_detail::Box> boxes;
        for (Set const& each : words_of(svg)) {
            CAPTURE(each.words);
            html_chart_detail::Box const box = box_of(each);
            CHECK(frame.holds(box));
            for (html_chart_detail::Box const& other : boxes) CHECK_FALSE(box.meets(other));
            boxes.push_back(box);
        }
        CHECK(boxes.size() >= 4 + names.size());
        // what is said takes half of the picture at most
        auto const ends = all_of(svg, "cx=\"", "\"");
        CHECK(tenths(ends.at(1)) - tenths(ends.at(0)) > frame.right / 3);
    }
}

TEST_CASE("a picture is taller only where its names need it") {
    auto const height = [](std::vector<std::string> const& names) {
        return frame_of(to_svg(chart_of(names), "Prices", "s1")).bottom;
    };
    std::string const four_lines = "Rye plum sandwich with cardamom, box of twelve";
    CHECK(height({"Tart", "Bun", "Roll", "Cake"}) == html_chart_detail::ways_size.height);
    int const tall = height(std::vector<std::string>(4, four_lines));
    CHECK(tall > html_chart_detail::ways_size.height);
    CHECK(height(std::vector<std::string>(4, four_lines + " or more of all of these")) == tall);
}

TEST_CASE("words of any length stand within the picture") {
    std::string const words(200, 'w');
    Chart chart = line_chart({{0, 1, words}, {100, 10, words}});
    chart.across = {words, {{0, "0"}, {100, "100"}}, ChartLine{50, words, words}};
    chart.up = {words, {{0, words}, {10, words}}, ChartLine{5, words, words}};
    chart.corners = {words, words, words, words};
    std::string const svg = to_svg(chart, "Prices", "s1");
    for (Set const& each : words_of(svg)) CHECK(frame_of(svg).holds(box_of(each)));
    for (std::string const& each : all_of(svg, " class=\"corner\">", "</text>"))
        CHECK(display_width(each) < 30);
    CHECK(count(svg, "class=\"corner\"") == 4);
}
