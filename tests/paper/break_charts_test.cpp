#include <groat/paper/break_charts.hpp>

#include "books.hpp"
#include "sheets.hpp"

#include <groat/paper/html.hpp>
#include <groat/paper/quote_sheet.hpp>
#include <groat/paper/text.hpp>

using namespace groat;
using namespace groat::test;

namespace {

std::vector<std::string> ticks(std::string_view most, std::string_view least = "0.01") {
    std::vector<std::string> shown;
    for (Number const& each : even_ticks(number(most), number(least)))
        shown.push_back(decimal_at_most(each, 4));
    return shown;
}
using List = std::vector<std::string>;

/// A bun of 1.00 of flour, and work of 10.00 once for the order, at a given margin of half: with so many it costs
/// 1 + 10 / count, and sells for twice that.
Book bun_book(std::vector<int> const& counts, int lines = 1) {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    role(book, "baker", "60.00");
    Formula& bun = formula(book, "bun", {{"flour", "100 g"}});
    bun.makes = quantity("1");
    book.shop.order_work.push_back(task("invoice", "baker", "10", Per::order));
    book.shop.price = at_margin("50 %");
    Order& wanted = order(book);
    for (int i = 0; i < lines; ++i) wants(wanted, "bun", 10);
    for (int const each : counts) wanted.quantity_breaks.emplace_back(each);
    link_well(book);
    return book;
}

struct Charts {
    explicit Charts(Book const& book) : costing(book, today) {
        Diagnostics found;
        auto made = groat::quote(costing, book.orders.front(), found);
        REQUIRE_MESSAGE(made.has_value(), in_words(found));
        client = client_break_chart(*made, book, Figures(book.shop), Words::english());
        maker = maker_break_charts(*made, book, Figures(book.shop));
        client_sheet = client_quote_sheet(*made, book);
        maker_sheet = maker_quote_sheet(*made, costing);
    }
    Costing costing;
    std::optional<Chart> client;
    std::vector<Chart> maker;
    Sheet client_sheet;
    Sheet maker_sheet;
};

} // namespace

TEST_CASE("ticks are even, few, and reach above the greatest") {
    CHECK(ticks("81") == List{"0", "20", "40", "60", "80", "100"});
    CHECK(ticks("5") == List{"0", "1", "2", "3", "4", "5"});
    CHECK(ticks("5.01") == List{"0", "2", "4", "6"});
    CHECK(ticks("0.35") == List{"0", "0.1", "0.2", "0.3", "0.4"});
    CHECK(ticks("1250") == List{"0", "500", "1000", "1500"});
    CHECK(ticks("0.02") == List{"0", "0.01", "0.02"}); // no finer than the smallest coin
    CHECK(ticks("0") == List{"0", "2"});               // an axis even so
    CHECK(ticks("3", "1") == List{"0", "1", "2", "3"});
}

TEST_CASE("the client sees what each would be at each count, and no cost") {
    Charts const charts(bun_book({1, 10, 100}));
    REQUIRE(charts.client.has_value());
    REQUIRE(charts.client->series.size() == 1);
    auto const& points = charts.client->series[0].points;
    REQUIRE(points.size() == 3);
    CHECK(points[0].label == "22.00"); // 2 * (1 + 10 / count)
    CHECK(points[1].label == "4.00");
    CHECK(points[2].label == "2.20");
    CHECK((points[2].x == 100));
    CHECK((points[2].y == Number(11) / 5));
    CHECK(charts.client->said == "Bun: 22.00 for 1, 2.20 for 100.");
    CHECK_FALSE(charts.client->is_lettered);
    std::string const page = to_html(charts.client_sheet);
    CHECK(says(page, "<svg class=\"chart low\""));
    CHECK(!says(page, "11.00")); // the cost of one
    CHECK(!says(page, "Cost each"));
}

TEST_CASE("the maker sees price and cost") {
    Charts const charts(bun_book({1, 10, 100}));
    REQUIRE(charts.maker.size() == 1);
    REQUIRE(charts.maker[0].series.size() == 2);
    CHECK(charts.maker[0].series[0].points[0].label == "22.00");
    CHECK(charts.maker[0].series[1].points[0].label == "11.00");
    CHECK(charts.maker[0].said ==
          "Price each: 22.00 for 1, 2.20 for 100. Cost each: 11.00 for 1, 1.10 for 100.");
    CHECK(says(to_html(charts.maker_sheet), "<svg class=\"chart low\""));
    CHECK(!says(to_text(charts.maker_sheet), "Price each: 22.00"));
}

TEST_CASE("counts are drawn in their order, each once") {
    Charts const charts(bun_book({100, 1, 10, 10}));
    REQUIRE(charts.client.has_value());
    auto const& points = charts.client->series[0].points;
    REQUIRE(points.size() == 3);
    CHECK((points[0].x == 1));
    CHECK((points[1].x == 10));
    CHECK((points[2].x == 100));
}

TEST_CASE("very many counts are drawn without their figures") {
    std::vector<int> counts;
    for (int i = 1; i <= 11; ++i) counts.push_back(10 * i);
    Charts const charts(bun_book(counts));
    REQUIRE(charts.client.has_value());
    CHECK(charts.client->series[0].points[0].label.empty());
    CHECK(charts.client->said == "Bun: 4.00 for 10, 2.19 for 110."); // 2.1818, up to a coin
    REQUIRE(charts.maker.size() == 1);
    CHECK(charts.maker[0].series[1].points[0].label.empty());
    CHECK(says(charts.maker[0].said, "Cost each: 2.00 for 10, 1.09 for 110."));
}

TEST_CASE("two counts are no curve") {
    Charts const charts(bun_book({1, 10}));
    CHECK_FALSE(charts.client.has_value());
    CHECK(charts.maker.empty());
    CHECK(section<Table>(charts.client_sheet, "quantity_breaks") != nullptr);
}

TEST_CASE("a client sees a picture of one line, the maker one of each of a few") {
    Charts const four(bun_book({1, 10, 100}, 4));
    CHECK_FALSE(four.client.has_value());
    CHECK(four.maker.size() == 4);
    Charts const five(bun_book({1, 10, 100}, 5));
    CHECK_FALSE(five.client.has_value());
    CHECK(five.maker.empty());
}
