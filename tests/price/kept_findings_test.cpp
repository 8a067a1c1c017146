#include "books.hpp"

#include <groat/price/kept_findings.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A pot of 1 kg of filling, kept 10 days: 4.00 of plums and 30 minutes at 12.00, by whole pots; 50 g in a bun.
Book pot_book() {
    Book book = a_book();
    food(book, "plum", "1 kg", "4.00");
    role(book, "cook", "12.00");
    Formula& filling = formula(book, "filling", {{"plum", "1 kg"}});
    filling.labour.push_back(task("stir", "cook", "30"));
    filling.batch_step = 1;
    filling.keeps_leftover = true;
    filling.keeping.days = 10;
    formula(book, "bun", {{"filling", "50 g"}}).makes = quantity("1");
    return book;
}

Order& ordered(Book& book, std::string_view id, std::string_view due, int buns) {
    Order& entry = order(book, id);
    entry.due = day(due);
    wants(entry, "bun", buns);
    return entry;
}

Diagnostics judged(Book& book) {
    link_well(book);
    return kept_findings(Costing(linked(book), today));
}

} // namespace

TEST_CASE(
    "an order that takes more than the pot it is costed at is told what its own pots would cost") {
    // 25 buns take 1.25 kg: 12.50 at 10.00 a kilogram; two pots for them alone: 20.00
    Book book = pot_book();
    ordered(book, "a", "2026-12-01", 25);
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    OrderCost const cost = costing.cost({sales_of(book.orders[0], book)});
    warn_of_short_runs(cost, book.orders[0], costing, found);
    auto const warning = finding(found, "kept-beyond-run");
    REQUIRE(warning.has_value());
    CHECK(warning->what ==
          "1.25 kg of 'filling' are taken here, more than the 1 kg of the run it is costed "
          "at; made for itself it would cost 20.00, not 12.50");
    found = {};
    warn_of_short_runs(costing.cost({{sale(book, "bun", 20)}}), book.orders[0], costing, found);
    CHECK(found.empty());
}

TEST_CASE("a rest that nothing in the books takes while it is good is told") {
    // 4 buns take 200 g: 2.00 of a pot; a pot for them alone 10.00
    Book book = pot_book();
    ordered(book, "a", "2026-12-01", 4);
    auto const warning = finding(judged(book), "kept-not-taken");
    REQUIRE(warning.has_value());
    CHECK(says(warning->what, "takes 200 g of 'filling'"));
    CHECK(says(warning->what, "made for itself it would cost 10.00, not 2.00"));
}

TEST_CASE("a rest that another order takes in time, or a menu, or of a whole pot, is no question") {
    Book book = pot_book();
    ordered(book, "a", "2026-12-01", 4);
    ordered(book, "b", "2026-12-10", 4); // nine days later
    CHECK(judged(book).empty());
    book.orders[1].due = day("2026-12-11"); // the tenth day is past: the day of making is day one
    CHECK(finding(judged(book), "kept-not-taken"));
    book.menus.emplace_back();
    book.menus[0].items.emplace_back();
    book.menus[0].items[0].item = named("bun");
    CHECK(judged(book).empty());
    book.menus.clear();
    book.orders.pop_back();
    book.orders[0].lines[0].count = 20; // a whole pot
    CHECK(judged(book).empty());
}
