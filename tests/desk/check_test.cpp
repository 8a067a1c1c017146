#include <groat/desk/check.hpp>

#include "sheets.hpp"

#include <groat/books/load.hpp>

using namespace groat;
using namespace groat::test;

namespace {

desk::Dates on_no_day() { return {{}, today}; }

/// Buns of flour, ordered.
Book buns() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    Formula& bun = formula(book, "bun", {{"flour", "100 g"}});
    bun.makes = quantity("1");
    bun.price = at_price("3.00");
    wants(order(book), "bun", 12);
    return book;
}

Diagnostics checked(Book& book, desk::Dates const& dates = on_no_day()) {
    link_well(book);
    Diagnostics found;
    desk::check(linked(book), dates, found);
    return found;
}

std::vector<std::string> codes(Diagnostics const& found) {
    std::vector<std::string> all;
    for (Diagnostic const& each : found.sorted()) all.push_back(each.code);
    return all;
}

} // namespace

TEST_CASE(
    "check looks at the formulas, the minimum order, the stock, the yields, the cold, the runs, "
    "what is kept, the suppliers, the orders, the scenarios and the menus") {
    std::vector<std::string_view> seen;
    for (desk::Look const& each : desk::looks()) seen.push_back(each.at);
    CHECK(seen == std::vector<std::string_view>{"the formulas", "the minimum order", "the stock",
                                                "the yields", "the cold", "the runs",
                                                "what is kept", "the suppliers", "the orders",
                                                "the scenarios", "the menus"});
}

TEST_CASE("what check finds is what its looks find, one after the other") {
    Sources sources;
    Loaded const bakery = load(std::string(GROAT_SOURCE_DIR) + "/samples/bakery", sources);
    REQUIRE(!bakery.diagnostics.has_errors());
    Diagnostics whole;
    desk::check(linked(bakery.book), on_no_day(), whole);
    Diagnostics parts;
    desk::CheckedBook books(linked(bakery.book), on_no_day());
    for (desk::Look const& each : desk::looks()) each.look(books, parts);
    CHECK(whole.sorted() == parts.sorted());
}

TEST_CASE("books in order give no finding") {
    Book book = buns();
    Diagnostics const found = checked(book);
    CHECK_MESSAGE(found.empty(), in_words(found));
}

TEST_CASE("each look finds what is wrong with what it looks at") {
    SUBCASE("the formulas") {
        Book book = buns();
        food(book, "salt"); // nobody sells it
        formula(book, "salted", {{"salt", "1 g"}}).makes = quantity("1");
        CHECK(finding(checked(book), "missing-price"));
    }
    SUBCASE("the minimum order") {
        Book book = buns();
        sold_as(book.formulas[0], "bag of 4", "4"); // which costs 4.00
        book.shop.minimum_order = money("3.99");
        CHECK(finding(checked(book), "minimum-below-cost"));
    }
    SUBCASE("the suppliers") {
        Book book = buns();
        offer(book, "flour", "1 kg", "10.50", "the dock");
        CHECK(codes(checked(book)) == std::vector<std::string>{"from-whom"});
    }
    SUBCASE("the scenarios") {
        Book book = buns();
        Scenario dear;
        dear.name = "dear";
        dear.changes.push_back({"flour tastes better"});
        book.scenarios.push_back(std::move(dear));
        CHECK(checked(book).errors() == 1);
    }
    SUBCASE("the menus") {
        Book book = buns();
        Menu menu;
        menu.name = "counter";
        MenuItem item;
        item.item = named("bun");
        item.price = money("0.90"); // below its cost of 1.00
        menu.items.push_back(std::move(item));
        book.menus.push_back(std::move(menu));
        CHECK(finding(checked(book), "below-cost"));
    }
    SUBCASE("the yields") {
        Book book = buns();
        book.ingredients[0].yield = share_of<Yield>("95 %");
        yield_test(book, "one", "flour", "10 kg", "7 kg");
        yield_test(book, "two", "flour", "10 kg", "7.1 kg");
        CHECK(checked(book).warnings() > 0);
    }
}

TEST_CASE("an order is checked on its own day, unless a day is said") {
    // 1.00 a bun while flour is 10.00, sold at 3.00; from December flour is 40.00, and a bun 4.00
    Book book = buns();
    offer(book, "flour", "1 kg", "40.00").from = day("2026-12-01");
    book.orders[0].date = day("2026-12-10");
    CHECK(!checked(book).empty());
    CHECK(checked(book, {day("2026-11-30"), today}).empty());
    CHECK(!checked(book, {day("2026-12-02"), today}).empty());
}

TEST_CASE("the books are counted; what most are without, only where there is any") {
    Book book = a_book();
    link_well(book);
    CHECK(desk::counts_in_words(book) ==
          "0 ingredients and supplies, 0 suppliers, 0 offers, 0 formulas, 0 orders");
    Book const full = buns();
    CHECK(desk::counts_in_words(full) ==
          "1 ingredient or supply, 1 supplier, 1 offer, 1 formula, 1 order");
    Book more = buns();
    receipt(more, "2026-11-20", "flour", "1 kg", 1, "9.80");
    CHECK(says(desk::counts_in_words(more), "1 order, 1 receipt"));
}

TEST_CASE("a summary says what the books hold and how much was found") {
    Book const book = buns();
    Diagnostics found;
    std::string const counts = desk::counts_in_words(book);
    CHECK(desk::summary_in_words(book, found) == counts + ": no errors, no warnings");
    found.error({}, "not-positive", "no");
    found.warn({}, "free-price", "one");
    found.warn({}, "free-price", "two");
    CHECK(desk::summary_in_words(book, found) == counts + ": 1 error, 2 warnings");
}

TEST_CASE("for programs, findings stand in a table with their places") {
    Book book = buns();
    Sources sources;
    std::uint32_t const file = sources.add("orders/1.yaml", "order: 1\n");
    Diagnostics found;
    found.warn(Span{file, 1, 8, 1}, "stale-price", "an odd order", "look at it");
    Sheet const sheet = desk::check_sheet(book, found, sources);
    CHECK(sheet.kind == "check");
    Table const& findings = table(sheet, "findings");
    REQUIRE(findings.rows.size() == 1);
    std::vector<std::string> cells;
    for (Cell const& each : findings.rows[0].cells) cells.push_back(shown(each));
    CHECK(cells == std::vector<std::string>{"warning", "stale-price", "orders/1.yaml", "1", "8",
                                            "an odd order", "look at it"});
}
