#include <groat/desk/answer.hpp>
#include <groat/desk/review.hpp>

#include "runs.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Shells of 25 g with runs of them for an order; plums with a test, flour without.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    food(book, "plum", "1 kg", "4.00");
    yield_test(book, "november", "plum", "10 kg", "9 kg");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("25 g");
    shell.price = at_price("1.00");
    formula(book, "cake", {{"flour", "1 kg"}}).makes = quantity("1");
    wants(order(book, "2026-041"), "shell", 40);
    wants(order(book, "2026-042"), "shell", 40);
    Run& run = a_run(book, "first", "shell", "2026-041");
    run.portioned = 40;
    run.good = 38;
    link_well(book);
    return book;
}

template <class T> std::string refused(Result<T> const& result) {
    return result ? "given" : result.error().what;
}

} // namespace

TEST_CASE("yields are reviewed of what is named, else of all that was tested") {
    Book book = bakery();
    Diagnostics found;
    CHECK(desk::yields_wished(book, today, {"plum"}, found)->size() == 1);
    CHECK(desk::yields_wished(book, today, {}, found)->size() == 1);
    CHECK(refused(desk::yields_wished(book, today, {"flower"}, found)) ==
          "no ingredient is called 'flower'");
    book.yield_tests.clear();
    CHECK(refused(desk::yields_wished(book, today, {}, found)) ==
          "there is no yield test in the books");
    CHECK(found.empty());
}

TEST_CASE("losses are told of what is named, else of all that has runs") {
    Book book = bakery();
    Diagnostics found;
    CHECK(desk::losses_wished(Costing(linked(book), today), {}, found)->size() == 1);
    CHECK(desk::losses_wished(Costing(linked(book), today), {"shell", "cake"}, found)->size() == 2);
    CHECK(refused(desk::losses_wished(Costing(linked(book), today), {"shel"}, found)) ==
          "no formula is called 'shel'");
    book.runs.clear();
    CHECK(refused(desk::losses_wished(Costing(linked(book), today), {}, found)) ==
          "there are no runs in these books");
}

TEST_CASE("what an order really cost is told by its runs") {
    Book const book = bakery();
    Diagnostics found;
    CHECK(refused(desk::variance_sheet(linked(book), {{}, today}, "2026-14", found)) ==
          "no order is called '2026-14'");
    auto const none = desk::variance_sheet(linked(book), {{}, today}, "2026-042", found);
    REQUIRE(!none.has_value()); // no run is for it
    CHECK(desk::is_as_found(none.error()));
    CHECK(found.has_errors());
}
