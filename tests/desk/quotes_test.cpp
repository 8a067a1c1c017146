#include <groat/desk/quotes.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    formula(book, "bun", {{"flour", "100 g"}}).makes = quantity("1");
    book.formulas[0].price = at_price("1.00");
    for (char const* id : {"a", "b", "c"}) wants(order(book, id), "bun", 10);
    link_well(book);
    return book;
}

} // namespace

TEST_CASE("with an order goes what the books say is made together with it") {
    Book book = bakery();
    book.orders[0].companions = {2}; // a and c are made together
    book.orders[2].companions = {0};
    auto const all = desk::whole_set({&book.orders[1], &book.orders[0]}, book);
    REQUIRE(all.size() == 3);
    CHECK(all[0]->id == "b");
    CHECK(all[1]->id == "a");
    CHECK(all[2]->id == "c");
}

TEST_CASE("each order has its sheet, for whom it was asked") {
    Book const book = bakery();
    Diagnostics found;
    auto const clients = desk::quote_sheets(linked(book), {{}, today}, {{"a", "b"}}, found);
    REQUIRE_MESSAGE(clients.has_value(), in_words(found));
    CHECK(clients->size() == 2);
    CHECK(clients->front().audience == "client");
    auto const makers = desk::quote_sheets(linked(book), {{}, today}, {{"b"}, true, true}, found);
    REQUIRE(makers.has_value());
    CHECK(makers->front().audience == "maker");
}

TEST_CASE("an order that is not there is refused before any is quoted") {
    Diagnostics found;
    auto const sheets = desk::quote_sheets(linked(bakery()), {{}, today}, {{"a", "d"}}, found);
    REQUIRE(!sheets.has_value());
    CHECK(sheets.error().what == "no order is called 'd'");
}
