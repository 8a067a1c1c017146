#include <groat/desk/answer.hpp>
#include <groat/desk/lookup.hpp>

#include "books.hpp"

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

Book a_shop() {
    Book book = a_book();
    food(book, "vanilla extract", "1 L", "90.00");
    food(book, "plain flour", "1 kg", "2.00");
    Formula& bun = formula(book, "bun", {{"plain flour", "50 g"}});
    bun.makes = quantity("1");
    sold_as(bun, "box of 6", "6");
    sold_as(bun, "bag of 4", "4");
    formula(book, "loose bun", {{"plain flour", "50 g"}}).makes = quantity("1");
    wants(order(book, "2026-041"), "bun", 1, "box of 6");
    wants(order(book, "2026-042"), "bun", 1, "box of 6");
    link_well(book);
    return book;
}

template <class T> std::string refused(Result<T> const& result) {
    if (result) return "found";
    return result.error().what + "; " + result.error().help;
}

} // namespace

TEST_CASE("a name that is not there is answered with the nearest one") {
    Book const book = a_shop();
    CHECK(refused(desk::find_ingredients(book, {"plain flour", "vanila extract"})) ==
          "no ingredient is called 'vanila extract'; did you mean 'vanilla extract'?");
    CHECK(refused(desk::find_order(book, "2026-014")) ==
          "no order is called '2026-014'; did you mean '2026-041'?");
    CHECK(refused(desk::find_menu(book, "winter")) == "no menu is called 'winter'; ");
    CHECK(refused(desk::find_formulas(book, {"quiche lorraine"})) ==
          "no formula is called 'quiche lorraine'; there are:\n    bun\n    loose bun");
}

TEST_CASE("of many names that there are only a dozen are told") {
    Book book = a_book();
    for (int i = 0; i < 20; ++i) food(book, fmt::format("spice number {}", i));
    link_well(book);
    std::string const said = refused(desk::find_ingredients(book, {"beef"}));
    CHECK(says(said, "spice number 11"));
    CHECK(!says(said, "spice number 12"));
}

TEST_CASE("ingredients are found in the order named") {
    Book const book = a_shop();
    auto const found = desk::find_ingredients(book, {"plain flour", "vanilla extract"});
    REQUIRE(found.has_value());
    CHECK(*found == std::vector<std::size_t>{1, 0});
}

TEST_CASE("an item is sold in the way named, else in the first one listed, else in none") {
    Book const book = a_shop();
    CHECK(desk::find_item(book, "bun")->unit->name == "box of 6");
    CHECK(desk::find_item(book, "bun", "bag of 4")->unit->name == "bag of 4");
    CHECK(desk::find_item(book, "loose bun")->unit == nullptr);
    CHECK(refused(desk::find_item(book, "bun", "boxes of 6")) ==
          "'bun' is not sold as 'boxes of 6'; did you mean 'box of 6'?");
    CHECK(refused(desk::find_item(book, "bun", "pallet")) ==
          "'bun' is not sold as 'pallet'; it is sold as: box of 6, bag of 4");
    CHECK(refused(desk::find_item(book, "loose bun", "box")) ==
          "'loose bun' is not sold as 'box'; ");
}

TEST_CASE("an order is named once") {
    Book const book = a_shop();
    CHECK(desk::find_orders(book, {"2026-042", "2026-041"})->front()->id == "2026-042");
    CHECK(refused(desk::find_orders(book, {"2026-041", "2026-041"})) ==
          "order '2026-041' is named twice; name each order once; more of an item is another "
          "'count' in its file");
}

TEST_CASE("what may be the name of something in doubt is not said to be missing") {
    Book book = a_shop();
    book.doubts.add(BookPart::orders, "2026-043");
    auto const doubtful = desk::find_order(book, "2026-043");
    REQUIRE(!doubtful.has_value());
    CHECK(desk::is_as_found(doubtful.error()));
    CHECK(!desk::is_as_found(desk::find_order(book, "2026-044").error()));
    book.doubts.add(BookPart::orders); // one that nobody can name
    CHECK(desk::is_as_found(desk::find_order(book, "2026-044").error()));
}
