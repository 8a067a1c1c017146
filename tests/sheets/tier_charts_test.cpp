#include <groat/price/quote.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/tier_charts.hpp>

#include "books.hpp"
#include "sheets.hpp"

#include <groat/paper/html.hpp>
#include <groat/paper/text.hpp>
#include <groat/sheets/quote_sheet.hpp>

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
    explicit Charts(Book const& book) : costing(linked(book), today) {
        Diagnostics found;
        auto made = groat::quote(costing, book.orders.front(), found);
        REQUIRE_MESSAGE(made.has_value(), in_words(found));
        maker = tier_charts(*made, book, Figures(book.shop));
        client_sheet = client_quote_sheet(quote_for_client(*made, book), book.shop);
        maker_sheet = maker_quote_sheet(*made, costing);
    }
    Costing costing;
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

TEST_CASE("the maker sees the price of each tier and what one costs at its worst") {
    Charts const charts(bun_book({1, 10, 100}));
    REQUIRE(charts.maker.size() == 1);
    REQUIRE(charts.maker[0].series.size() == 2);
    auto const& prices = charts.maker[0].series[0].points;
    REQUIRE(prices.size() == 6);       // from and to of each
    CHECK(prices[0].label == "22.00"); // 2 * (1 + 10 / count)
    CHECK((prices[0].x == 1));
    CHECK((prices[1].x == 9));
    CHECK((prices[1].y == 22));
    CHECK(prices[1].label.empty());
    CHECK(prices[4].label == "2.20");
    CHECK((prices[5].x == 400));
    auto const& costs = charts.maker[0].series[1].points;
    REQUIRE(costs.size() == 3);
    CHECK(costs[0].label == "11.00");
    CHECK((costs[2].x == 100));
    CHECK(charts.maker[0].said ==
          "Price each: 22.00 from 1, 2.20 from 100. Cost each: 11.00 for 1, 1.10 for 100.");
    CHECK(says(to_html(charts.maker_sheet), "<svg class=\"chart low\""));
    CHECK(!says(to_text(charts.maker_sheet), "Price each: 22.00"));
}

TEST_CASE("the client sees no picture") {
    Charts const charts(bun_book({1, 10, 100}));
    CHECK(!says(to_html(charts.client_sheet), "<svg"));
}

TEST_CASE("very many tiers are drawn without their figures") {
    std::vector<int> counts;
    for (int i = 1; i <= 11; ++i) counts.push_back(10 * i);
    Charts const charts(bun_book(counts));
    REQUIRE(charts.maker.size() == 1);
    CHECK(charts.maker[0].series[0].points[0].label.empty());
    CHECK(charts.maker[0].series[1].points[0].label.empty());
    CHECK(charts.maker[0].said ==
          "Price each: 4.00 from 10, 2.19 from 110. Cost each: 2.00 for 10, 1.09 for 110.");
}

TEST_CASE("two tiers are no picture") {
    Charts const charts(bun_book({1, 10}));
    CHECK(charts.maker.empty());
    CHECK(section<Table>(charts.client_sheet, "tiers") != nullptr);
}

TEST_CASE("the maker sees a picture of each of a few lines") {
    CHECK(Charts(bun_book({1, 10, 100}, 4)).maker.size() == 4);
    CHECK(Charts(bun_book({1, 10, 100}, 5)).maker.empty());
}
