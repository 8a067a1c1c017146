#include "books.hpp"

#include <groat/model/link.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Book fruit() {
    Book book = a_book();
    food(book, "plum", "1 kg", "3.00");
    supply(book, "box", "10", "4.00");
    yield_test(book, "plums of may", "plum", "10 kg", "8 kg");
    return book;
}

} // namespace

TEST_CASE("a yield that cites tests is worked out, and anew when the tests have changed") {
    Book book = fruit();
    book.ingredients[0].yield_source = by_test();
    link_well(book);
    CHECK(book.ingredients[0].yield->value() == percent("80 %"));
    yield_test(book, "plums of june", "plum", "10 kg", "9 kg");
    link_well(book);
    CHECK(book.ingredients[0].yield->value() == percent("85 %"));
}

TEST_CASE("what a test is of, and what is cited, has to be there; else both are in doubt") {
    Book book = fruit();
    book.yield_tests[0].item = named("plumb");
    book.ingredients[0].yield_source = by_test("plums of mai");
    auto const found = link(book).sorted();
    REQUIRE(found.size() == 2);
    CHECK(found[0].code == "unknown-ingredient");
    CHECK(found[0].help == "did you mean 'plum'?");
    CHECK(found[1].code == "unknown-yield-test");
    CHECK(found[1].help == "did you mean 'plums of may'?");
    CHECK(book.yield_tests[0].is_in_doubt);
    CHECK(book.ingredients[0].is_in_doubt);
    CHECK_FALSE(book.ingredients[1].is_in_doubt);
}

TEST_CASE("a supply has no yield") {
    Book book = fruit();
    book.yield_tests[0].item = named("box");
    Diagnostics const found = link(book);
    CHECK(found.errors() == 1);
    CHECK(finding(found, "supply-as-food"));
    CHECK_FALSE(book.yield_tests[0].item.is_resolved());
}
