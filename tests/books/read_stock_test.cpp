#include <groat/books/read_stock.hpp>

#include "reading.hpp"

#include <doctest/doctest.h>

#include <string>

using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    groat::Stock stock(std::string const& text) { return read_stock(node(text), reading); }
};

std::string stock_marks(std::string const& text) {
    Reader desk;
    (void)desk.stock(text);
    return desk.marked();
}

} // namespace

TEST_CASE("every field of the stock arrives") {
    Reader desk;
    groat::Stock const stock = desk.stock("stock: 2026-11-24\n"
                                          "items:\n"
                                          "  flour: 12 kg\n"
                                          "  egg: {amount: 3 dozen, good until: 2026-12-01}\n");
    CHECK(desk.said() == "");
    CHECK(stock.counted == *groat::parse_date("2026-11-24"));
    REQUIRE(stock.items.size() == 2);
    CHECK(stock.items[0].item.name == "flour");
    CHECK(stock.items[0].amount.amount == 12000);
    CHECK_FALSE(stock.items[0].good_until);
    CHECK(stock.items[0].origin.line == 3);
    CHECK(stock.items[1].amount.amount == 36);
    CHECK(stock.items[1].good_until == *groat::parse_date("2026-12-01"));
}

TEST_CASE("an item is good up to its day and on it") {
    groat::StockItem item;
    CHECK(item.is_good_on(*groat::parse_date("2026-12-01")));
    item.good_until = *groat::parse_date("2026-12-01");
    CHECK(item.is_good_on(*groat::parse_date("2026-12-01")));
    CHECK_FALSE(item.is_good_on(*groat::parse_date("2026-12-02")));
}

TEST_CASE("an empty place on the shelf is an amount of nothing") {
    CHECK(stock_marks("stock: 2026-11-24\nitems: {flour: 0 kg}\n") == "");
}

TEST_CASE("stock without a day or items is refused") {
    CHECK(stock_marks("items: {}\n") == "1:1+1 missing-key");
    CHECK(stock_marks("stock: 2026-11-24\n") == "1:1+1 missing-key");
    CHECK(stock_marks("stock: 2026-11-24\nitems: [flour]\n") == "2:8+1 wrong-kind");
}

TEST_CASE("what is no amount is refused where it stands") {
    CHECK(stock_marks("stock: 2026-11-24\nitems: {flour: -2 kg}\n") == "2:16+5 not-positive");
    CHECK(stock_marks("stock: 2026-11-24\nitems: {flour: 2 kgs}\n") == "2:18+3 unknown-unit");
    CHECK(stock_marks("stock: 2026-11-24\nitems: {flour: {good until: 2026-12-01}}\n") ==
          "2:16+1 missing-key");
    CHECK(
        stock_marks("stock: 2026-11-24\nitems: {flour: {amount: 1 kg, god until: 2026-12-01}}\n") ==
        "2:31+9 unknown-key");
}

TEST_CASE(
    "own goods, loose and packed, several lots of one thing, and what is wanted on the shelf") {
    Reader desk;
    groat::Stock const stock =
        desk.stock("stock: 2026-11-24\n"
                   "items:\n"
                   "  rye shell: [120, {amount: 40, good until: 2026-12-01}]\n"
                   "  sandwich: {as: box of 12, amount: 3}\n"
                   "  flour: {amount: 6 kg, par: 10 kg}\n");
    CHECK(desk.said() == "");
    REQUIRE(stock.items.size() == 4);
    CHECK(stock.items[0].amount.amount == 120);
    CHECK(stock.items[1].item.name == "rye shell");
    CHECK(stock.items[1].good_until == *groat::parse_date("2026-12-01"));
    CHECK(stock.items[2].sale_unit.name == "box of 12");
    REQUIRE(stock.items[3].par);
    CHECK(stock.items[3].par->amount == 10000);
}

TEST_CASE("an empty list of lots, and two pars of one thing, are refused") {
    CHECK(stock_marks("stock: 2026-11-24\nitems: {flour: []}\n") != "");
    Reader desk;
    (void)desk.stock("stock: 2026-11-24\n"
                     "items:\n"
                     "  flour: [{amount: 1 kg, par: 2 kg}, {amount: 1 kg, par: 3 kg}]\n");
    CHECK(desk.said().find("the par of 'flour' is given twice") != std::string::npos);
}
