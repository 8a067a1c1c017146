#include "books.hpp"

#include <groat/plan/buying_findings.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Diagnostics found_in(Book& book) {
    link_well(book);
    return buying_findings(Costing(linked(book), today));
}

/// Five things that both the mill and the dock offer.
Book two_lists() {
    Book book = a_book();
    for (char const* name : {"butter", "flour", "sugar", "eggs", "honey"}) {
        food(book, name);
        offer(book, name, "1 kg", "2.00", "the mill");
        offer(book, name, "1 kg", "2.10", "the dock");
    }
    return book;
}

} // namespace

TEST_CASE("from whom one buys is asked once, however many things it is open for") {
    Book book = two_lists();
    Diagnostics const found = found_in(book);
    CHECK(found.warnings() == 1);
    CHECK(
        finding(found, "from-whom")->what ==
        "from whom do you buy 'butter', 'flour', 'sugar' and 2 more? Several suppliers offer them, and "
        "the cheapest offer is taken");
}

TEST_CASE("who prefers, buys, or only compares is not asked") {
    Book book = two_lists();
    book.ingredients[0].preferred_supplier = named("the dock");
    receipt(book, "2026-11-20", "flour", "1 kg", 1, "2.10", "the dock");
    for (std::size_t i = 4; i < 10; ++i) book.offers[i].is_only_compared = i % 2 == 1;
    CHECK(found_in(book).empty());
    book.offers[9].is_only_compared = false;
    CHECK(says(finding(found_in(book), "from-whom")->what,
               "from whom do you buy 'honey'? Several suppliers offer it"));
    book.offers[9].is_only_compared = true;
    receipt(book, "2026-12-20", "honey", "1 kg", 1, "2.10", "the dock"); // later than today
    CHECK(found_in(book).empty());
}

TEST_CASE("two packs of one supplier are no question") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 kg", "9.00");
    offer(book, "butter", "5 kg", "40.00");
    CHECK(found_in(book).empty());
}

TEST_CASE("a price paid more than a quarter off the one before is asked about") {
    Book book = a_book();
    food(book, "butter");
    receipt(book, "2026-11-02", "butter", "1 kg", 2, "16.00");
    receipt(book, "2026-11-20", "butter", "5 kg", 1, "50.00", "the dock"); // 10.00, a quarter more
    CHECK(found_in(book).empty());
    book.receipts[1].items[0].paid = money("50.05");
    Diagnostics const found = found_in(book);
    REQUIRE(found.warnings() == 1);
    CHECK(
        found.sorted()[0].what ==
        "'butter' was bought at 10.01 / kg on 2026-11-20, 25 % more than 8.00 / kg on 2026-11-02");
    book.receipts[1].items[0].paid = money("29.00"); // 5.80
    CHECK(says(found_in(book).sorted()[0].what, "28 % less than"));
    book.receipts[1].items[0].is_stopgap = true;
    CHECK(found_in(book).empty());
}

TEST_CASE("the price before is that of another day, and per usable unit") {
    // 10.00 at 100 % and 8.00 at 80 % are the same; what else was bought that day does not matter
    Book book = a_book();
    food(book, "plum");
    offer(book, "plum", "1 kg", "9.00", "the farm").yield = share_of<Yield>("80 %");
    receipt(book, "2026-11-02", "plum", "1 kg", 9, "90.00");
    receipt(book, "2026-11-20", "plum", "1 kg", 1, "2.00");
    receipt(book, "2026-11-20", "plum", "1 kg", 2, "16.00", "the farm");
    Diagnostics const found = found_in(book);
    CHECK_FALSE(finding(found, "paid-far-off"));
}
