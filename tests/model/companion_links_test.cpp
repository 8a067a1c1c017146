#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Book three_orders() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    formula(book, "shell", {{"flour", "1 kg"}}).makes = quantity("20");
    for (std::string_view const id : {"a", "b", "c", "d"}) wants(order(book, id), "shell", 1);
    return book;
}

} // namespace

TEST_CASE("what one order says of whom it is made with holds for all of them") {
    // a names b, c names b: a, b and c are one set; d is alone
    Book book = three_orders();
    book.orders[0].made_with.push_back(named("b"));
    book.orders[2].made_with.push_back(named("b"));
    link_well(book);
    CHECK(book.orders[0].companions == std::vector<std::size_t>{1, 2});
    CHECK(book.orders[1].companions == std::vector<std::size_t>{0, 2});
    CHECK(book.orders[2].companions == std::vector<std::size_t>{0, 1});
    CHECK(book.orders[3].companions.empty());
}

TEST_CASE("an order made with one that is not there, or with itself, is told and in doubt") {
    Book book = three_orders();
    book.orders[0].made_with.push_back(named("bb"));
    book.orders[1].made_with.push_back(named("b"));
    Diagnostics const found = link(book);
    auto const missed = finding(found, "unknown-order");
    REQUIRE(missed.has_value());
    CHECK(missed->what == "no order is called 'bb'");
    CHECK(finding(found, "made-with-itself"));
    CHECK(book.orders[0].is_in_doubt);
    CHECK(book.orders[1].is_in_doubt);
    CHECK(!book.orders[2].is_in_doubt);
}
