#include "sheets.hpp"

#include <groat/paper/json.hpp>
#include <groat/paper/text.hpp>
#include <groat/sheets/yield_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// Plums stated at 92 %, tested twice, once with a by-product.
Book plums() {
    Book book = a_book();
    food(book, "plum").yield = share_of<Yield>("92 %");
    offer(book, "plum", "10 kg", "33.00", "the farm");
    YieldTest& first = yield_test(book, "october", "plum", "10 kg", "8.8 kg");
    first.date = day("2026-10-01");
    first.price = money("33.00");
    trim(first, "stones", "0.9 kg");
    trim(first, "bruised", "0.2 kg", rate("1.20", "kg"));
    YieldTest& second = yield_test(book, "november", "plum", "1/3 kg", "0.3 kg");
    second.date = day("2026-11-01");
    trim(second, "stones", "1/30 kg");
    return book;
}

Sheet sheet_of(Book& book) {
    link_well(book);
    return yield_sheet({review_yields(book, 0, today).value()}, book, today);
}

} // namespace

TEST_CASE("each test shows what was bought, what could be used, and the factor") {
    Book book = plums();
    Table const tests = table(sheet_of(book), "tests", "plum");
    CHECK(shown(tests, "1", "bought") == "10.000");
    CHECK(shown(tests, "1", "usable") == "8.800");
    CHECK(shown(tests, "1", "yield") == "88.0");
    CHECK(shown(tests, "1", "factor") == "1.136"); // 1 / 0.88
    CHECK(shown(tests, "2", "yield") == "90.0");
    // 9.1 of 10 1/3 kg
    CHECK(shown(tests, "total", "yield") == "88.1");
}

TEST_CASE("what was usable is the same wherever it stands") {
    Book book = a_book();
    food(book, "lemon");
    trim(yield_test(book, "t", "lemon", "1 kg", "1/3 kg"), "peel", "2000/3 g");
    trim(yield_test(book, "u", "lemon", "1000.5 g", "333.4 g"), "peel", "600.4 g");
    Sheet const sheet = sheet_of(book);
    CHECK(shown(table(sheet, "tests", "lemon"), "1", "usable") == "0.333");
    CHECK(shown(table(sheet, "parts", "t"), "Usable", "mass") == "0.333");
    CHECK(shown(table(sheet, "tests", "lemon"), "2", "usable") == "0.333");
    CHECK(shown(table(sheet, "parts", "u"), "Usable", "mass") == "0.333");
    CHECK(what_does_not_add_up(table(sheet, "parts", "t"), "kg").empty());
    CHECK(what_does_not_add_up(table(sheet, "parts", "u"), "kg").empty());
    CHECK(what_does_not_add_up(table(sheet, "parts", "u"), "%").empty());
}

TEST_CASE("every part of a test adds up to what was bought, as printed and exactly") {
    Book book = plums();
    Sheet const sheet = sheet_of(book);
    Table const& parts = table(sheet, "parts", "october");
    CHECK(shown(parts, "Stones", "mass") == "0.900");
    CHECK(shown(parts, "Unaccounted for", "mass") == "0.100");
    CHECK(shown(parts, "Unaccounted for", "share") == "1.0");
    CHECK(shown(parts, "Bruised", "worth") == "0.24");
    CHECK(shown(parts, "Bought", "worth") == "0.24");
    CHECK(shown(parts, "Bought", "share") == "100.0");
    for (std::string_view const unit : {"kg", "g", "USD"}) {
        CAPTURE(unit);
        CHECK(what_does_not_add_up(sheet, unit).empty());
    }
    CHECK(what_does_not_add_up(parts, "%").empty());
    // thirds of a kilogram in grams
    CHECK(shown(table(sheet, "parts", "november"), "Bought", "mass") == "333.3");
}

TEST_CASE("where it went is told of tests that say so") {
    Book book = a_book();
    food(book, "rice");
    yield_test(book, "t", "rice", "1 kg", "2.5 kg");
    Sheet const sheet = sheet_of(book);
    CHECK(section<Table>(sheet, "parts", "t") == nullptr);
    CHECK(shown(table(sheet, "tests", "rice"), "1", "yield") == "250.0");
    CHECK(shown(table(sheet, "tests", "rice"), "1", "factor") == "0.400");
    CHECK(says(table(sheet, "tests", "rice").remark, "One test"));
}

TEST_CASE("the cost of a test takes the by-product off, and says that nothing else does") {
    Book book = plums();
    Sheet const sheet = sheet_of(book);
    Table const& cost = table(sheet, "costs", "plum");
    CHECK(cost.rows.size() == 1); // the other has no price
    CHECK(shown(cost, "1", "bought_kg") == "3.30");
    CHECK(shown(cost, "1", "by_product") == "-0.24");
    CHECK(shown(cost, "1", "usable_kg") == "3.72"); // 32.76 / 8.8
    CHECK(shown(cost, "1", "usable_lb") == "1.69");
    CHECK(says(cost.remark, "only when it is used"));
    book.shop.measures = Measures::metric;
    CHECK(!says(to_text(sheet_of(book)), "Usable cost per lb"));
}

TEST_CASE("a yield in the books that no test reached is told with what it costs") {
    Book book = plums();
    Sheet const sheet = sheet_of(book);
    Table const& books = table(sheet, "books", "plum");
    CHECK(shown(books, "1", "said_by") == "the ingredient");
    CHECK(shown(books, "1", "yield") == "92.0");
    CHECK(shown(books, "1", "points") == "-3.9");    // 88.06 - 92
    CHECK(shown(books, "1", "usable_kg") == "3.59"); // 3.30 / 0.92
    CHECK(shown(books, "1", "tested_kg") == "3.75"); // 3.30 / 0.8806
    CHECK(shown(books, "1", "dearer_kg") == "0.16");
    Remarks const* remarks = section<Remarks>(sheet, "remarks", "plum");
    REQUIRE(remarks != nullptr);
    CHECK(remarks->lines.front() ==
          "The books say 92 %, and none of 2 tests gave as much: as tested, a usable kilogram "
          "from the farm, 10 kg costs 0.16 USD more.");
    book.ingredients[0].yield = share_of<Yield>("80 %");
    CHECK(says(to_text(sheet_of(book)), "every one of 2 tests gave more"));
    book.ingredients[0].yield = share_of<Yield>("89 %");
    CHECK(section<Remarks>(sheet_of(book), "remarks", "plum") == nullptr);
}

TEST_CASE("who says a yield, and by which test, is named") {
    Book book = plums();
    book.ingredients[0].yield_source = by_test("october");
    book.offers[0].yield_source = by_test();
    Sheet const sheet = sheet_of(book);
    CHECK(shown(table(sheet, "books", "plum"), "1", "said_by") == "the offer, by all tests");
    book.offers[0].yield_source = {};
    book.offers[0].yield.reset();
    CHECK(shown(table(sheet_of(book), "books", "plum"), "1", "said_by") ==
          "the ingredient, by 'october'");
    book.ingredients[0].yield_source = {};
    book.ingredients[0].yield.reset();
    CHECK(shown(table(sheet_of(book), "books", "plum"), "1", "said_by") == "nobody");
}

TEST_CASE("programs get every figure exactly") {
    Book book = plums();
    std::string const json = to_json(sheet_of(book));
    CHECK(says(json, "\"sheet\": \"yields\""));
    CHECK(says(json, "\"exact\": \"22/25\"")); // 88 %
    CHECK(says(json, "\"exact\": \"25/22\"")); // its factor
}
