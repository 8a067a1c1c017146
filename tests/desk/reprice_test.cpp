#include <groat/desk/reprice.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Two plates that cost 3.00 and sell at 5.00, ten of each.
Book counter() {
    Book book = a_book();
    Menu menu;
    menu.name = "counter";
    for (char const* name : {"soup", "salad"}) {
        std::string const what = std::string("all of ") + name;
        food(book, what, "1 kg", "3.00");
        formula(book, name, {{what, "1 kg"}}).makes = quantity("1");
        MenuItem item;
        item.item = named(name);
        item.price = money("5.00");
        item.sold = 10;
        menu.items.push_back(std::move(item));
    }
    book.menus.push_back(std::move(menu));
    link_well(book);
    return book;
}

std::string repriced(desk::RepriceWish const& wish) {
    Book const book = counter();
    Diagnostics found;
    auto const sheet =
        desk::repricing_sheet(Costing(linked(book), today), book.menus.front(), wish, found);
    if (sheet) return "given";
    return sheet.error().what.empty() ? found.sorted().front().code : sheet.error().what;
}

} // namespace

TEST_CASE("a menu is to reach a margin or a food cost") {
    CHECK(std::get<Margin>(*desk::parse_aim(" margin 35 %")).value() == number("7/20"));
    CHECK(std::get<FoodCostShare>(*desk::parse_aim("food cost 30 %")).value() == number("3/10"));
    CHECK(desk::parse_aim("profit 3 %").error().what == "'profit 3 %' is nothing a menu can reach");
    CHECK(!desk::parse_aim("margin of plenty"));
}

TEST_CASE("so many prices are a whole number from one on") {
    CHECK(*desk::parse_count("3") == 3);
    CHECK(*desk::parse_count("10000") == 10000);
    for (char const* none : {"0", "-1", "1/2", "10001", "some"}) CHECK(!desk::parse_count(none));
}

TEST_CASE("each word that is wrong is told with its option") {
    CHECK(repriced({"margin 45 %", "20 %"}) == "given");
    CHECK(repriced({"riches", "20 %"}) == "--reach: 'riches' is nothing a menu can reach");
    CHECK(repriced({"margin 45 %", ""}) == "--move: it is not said how far a price may move");
    CHECK(repriced({"margin 45 %", "20 %", "none"}) == "--at-most: 'none' is no number of prices");
    CHECK(repriced({"margin 45 %", "20 %", "", {"stew"}}).starts_with("--leave: "));
}

TEST_CASE("a margin out of reach is found at the menu") {
    CHECK(!repriced({"margin 90 %", "1 %"}).starts_with("given"));
}
