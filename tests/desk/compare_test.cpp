#include <groat/desk/compare.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Buns of flour, ordered; butter on offer, salt from nobody, and yeast that is sold from next year on.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    food(book, "butter", "1 kg", "9.00");
    food(book, "salt");
    food(book, "yeast");
    offer(book, "yeast", "1 kg", "12.00").from = day("2027-01-01");
    formula(book, "bun", {{"flour", "100 g"}}).makes = quantity("1");
    book.formulas[0].price = at_price("1.00");
    wants(order(book), "bun", 30);
    link_well(book);
    return book;
}

std::string compared(Book const& book, desk::CompareWish const& wish) {
    Diagnostics found;
    auto const all = desk::comparisons_wished(linked(book), today, wish, found);
    if (!all) return all.error().what.empty() ? found.sorted().front().code : all.error().what;
    std::string names;
    for (Comparison const& each : *all)
        names += (names.empty() ? "" : ", ") + book.ingredients[each.ingredient].name;
    return names;
}

} // namespace

TEST_CASE("what is compared is named, is all that anybody offers, or what the orders take") {
    Book const book = bakery();
    CHECK(compared(book, {{"butter", "flour"}}) == "butter, flour");
    CHECK(compared(book, {{}, true}) == "flour, butter"); // yeast is not sold yet
    CHECK(compared(book, {{}, false, true}) == "flour");
    CHECK(compared(book, {{"butter"}, false, true}) == "butter");
}

TEST_CASE("a name, an amount or nothing at all can be wrong with it") {
    Book const book = bakery();
    CHECK(compared(book, {}) == "nothing to compare");
    CHECK(compared(book, {{"flower"}}) == "no ingredient is called 'flower'");
    CHECK(compared(book, {{"flour"}, false, false, "0 kg"}) == "--amount: it must be above 0");
    CHECK(compared(book, {{"flour"}, false, false, "some"}).starts_with("--amount: "));
    CHECK(compared(book, {{"yeast"}}) == "future-price"); // who names it wants to know
    CHECK(compared(book, {{"salt"}}) == "missing-price");
}

TEST_CASE("orders take what is usable, each at its own prices") {
    Diagnostics found;
    auto const taken = desk::taken_by_orders(linked(bakery()), today, found);
    REQUIRE(taken.has_value());
    CHECK((*taken)[0] == 3000); // 30 buns of 100 g
    CHECK((*taken)[1].is_zero());
}
