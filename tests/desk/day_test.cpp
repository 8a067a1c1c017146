#include <groat/desk/day.hpp>
#include <groat/price/quote.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

desk::Dates on(std::string_view said) { return {day(said), today}; }
desk::Dates unsaid() { return {{}, today}; }

} // namespace

TEST_CASE("the day said goes before the one of an order, and that before today") {
    CHECK(desk::day_of(unsaid()) == today);
    CHECK(desk::day_of(unsaid(), day("2026-12-12")) == day("2026-12-12"));
    CHECK(desk::day_of(on("2026-12-01"), day("2026-12-12")) == day("2026-12-01"));
}

TEST_CASE(
    "an order is priced on its own day, with companions on the earliest day that they agree on") {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    formula(book, "bun", {{"flour", "50 g"}}).makes = quantity("1");
    wants(order(book, "a"), "bun", 1);
    wants(order(book, "b"), "bun", 1);
    book.orders[0].date = day("2026-12-12");
    book.orders[1].date = std::nullopt;
    link_well(book);
    CHECK(desk::day_of_order(unsaid(), book.orders[0], book) == day("2026-12-12"));
    CHECK(desk::day_of_order(unsaid(), book.orders[1], book) == today);
    CHECK(desk::day_of_order(on("2026-12-01"), book.orders[0], book) == day("2026-12-01"));
    std::vector<Order const*> const other{&book.orders[0]};
    CHECK(desk::day_of_order(unsaid(), book.orders[1], other) ==
          pricing_date(book.orders[1], other).value_or(today));
}

TEST_CASE("orders made together are made on the latest of their days") {
    Book book = a_book();
    for (char const* id : {"a", "b", "c"}) order(book, id).date = std::nullopt;
    std::vector<Order const*> const all{&book.orders[0], &book.orders[1], &book.orders[2]};
    CHECK(desk::day_of_making(unsaid(), all) == today);
    book.orders[0].date = day("2026-12-09");
    book.orders[1].date = day("2026-12-03");
    CHECK(desk::day_of_making(unsaid(), all) == day("2026-12-09"));
    CHECK(desk::day_of_making(on("2026-12-01"), all) == day("2026-12-01"));
}
