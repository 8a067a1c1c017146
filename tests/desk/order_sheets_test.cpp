#include <groat/desk/order_sheets.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Buns in boxes and by the piece, and jam that is sold by the jar and bought from another.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    offer(book, "plum", "1 kg", "4.00", "The Orchard");
    food(book, "plum");
    Formula& bun = formula(book, "bun", {{"flour", "50 g"}});
    bun.makes = quantity("1");
    sold_as(bun, "Box of 6", "6");
    sold_as(bun, "box: of 6", "6");
    Formula& jam = formula(book, "jam", {{"plum", "200 g"}});
    jam.makes = quantity("1");
    for (Formula* each : {&bun, &jam}) each->price = at_price("9.00");
    Order& taken = order(book, "2026-041");
    wants(taken, "bun", 2, "Box of 6");
    wants(taken, "bun", 1, "Box of 6");
    wants(taken, "bun", 1, "box: of 6");
    wants(taken, "jam", 3);
    link_well(book);
    return book;
}

std::vector<std::string> paths(Book const& book) {
    LinkedBook const books = linked(book);
    Diagnostics found;
    auto const files = desk::order_sheets(books, books.book().orders.front(),
                                          {{}, today, day("2026-11-24")}, found);
    REQUIRE_MESSAGE(files.has_value(), in_words(found));
    std::vector<std::string> all;
    for (desk::SheetFile const& each : *files) all.push_back(each.path);
    return all;
}

} // namespace

TEST_CASE(
    "the client gets the quote, each item a label, the maker three sheets, each supplier an order") {
    // an item ordered twice in one way has one label; two ways whose names make one file have two files
    CHECK(paths(bakery()) ==
          std::vector<std::string>{"client/quote-2026-041", "labels/bun-box-of-6",
                                   "labels/bun-box-of-6-2", "labels/jam",
                                   "maker/worksheet-2026-041", "maker/to-make", "maker/to-buy",
                                   "suppliers/the-mill", "suppliers/the-orchard"});
}

TEST_CASE("each sheet lies where those may look who get it") {
    LinkedBook const books = linked(bakery());
    Diagnostics found;
    auto const files = desk::order_sheets(books, books.book().orders.front(), {{}, today}, found);
    REQUIRE(files.has_value());
    for (desk::SheetFile const& each : *files) {
        CAPTURE(each.path);
        CHECK((each.sheet.audience == "maker") == each.path.starts_with("maker/"));
    }
}

TEST_CASE("where one sheet cannot be calculated there is none") {
    Book book = bakery();
    book.offers.erase(book.offers.begin()); // flour
    LinkedBook const books = linked(book);
    Diagnostics found;
    CHECK(!desk::order_sheets(books, books.book().orders.front(), {{}, today}, found));
    CHECK(finding(found, "missing-price"));
}

TEST_CASE("any words make the name of a file") {
    using desk::file_name;
    CHECK(file_name("Rye-plum sandwich, box of 12") == "rye-plum-sandwich-box-of-12");
    CHECK(file_name("../a/b\\c:d") == "a-b-c-d");
    CHECK(file_name("Nussschnecke, Stück") == "nussschnecke-stück");
    CHECK(file_name("...") == "sheet");
    CHECK(file_name("") == "sheet");
    std::string const cut = file_name(std::string(99, 'a') + "üü"); // no letter is cut in two
    CHECK(cut == std::string(99, 'a'));
}
