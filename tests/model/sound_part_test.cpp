#include "books.hpp"

#include <groat/model/sound_part.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>
#include <vector>

using namespace groat;
using namespace groat::test;

namespace {

/// Two cookies that share flour: one by itself, one filled with plum cream, each ordered and one on a menu.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    food(book, "plum", "1 kg", "3.00");
    food(book, "saffron", "1 g", "9.00");
    supply(book, "box", "10", "4.00");
    formula(book, "shell", {{"flour", "1 kg"}}).makes = quantity("40");
    formula(book, "plum cream", {{"plum", "1 kg"}});
    formula(book, "sandwich", {{"shell", "2"}, {"plum cream", "20 g"}}).makes = quantity("1");
    sold_as(book.formulas[2], "box", "6").packing = {uses("box", "1", Per::sale_unit)};
    wants(order(book, "plain"), "shell", 10);
    wants(order(book, "filled"), "sandwich", 10);
    book.menus.emplace_back().name = "counter";
    book.menus.front().items.emplace_back().item = named("sandwich");
    return book;
}

/// What is left of a book, by name and in its order.
std::string left(Book& book) {
    (void)link(book);
    keep_sound_part(book);
    std::vector<std::string> names = names_of(book.ingredients);
    for (std::string& name : names_of(book.formulas)) names.push_back(std::move(name));
    for (Order const& each : book.orders) names.push_back(each.id);
    for (Menu const& each : book.menus) names.push_back(each.name);
    CHECK_FALSE(link(book).has_errors()); // whatever is left is sound
    return fmt::format("{}", fmt::join(names, ", "));
}

constexpr auto all =
    "flour, plum, saffron, box, shell, plum cream, sandwich, plain, filled, counter";
constexpr auto without_filled = "flour, saffron, box, shell, plain";

} // namespace

TEST_CASE("of a book without an error all is kept") {
    Book book = bakery();
    CHECK(left(book) == all);
    CHECK_FALSE(book.doubts.any(BookPart::orders));
}

TEST_CASE("an error holds up what uses the thing it stands in, however far up, and nothing else") {
    SUBCASE("an ingredient, from the reader") {
        Book book = bakery();
        book.ingredients[1].is_in_doubt = true;
        CHECK(left(book) == without_filled);
        CHECK(book.doubts.names(BookPart::ingredients, "plum"));
        CHECK(book.doubts.names(BookPart::formulas, "plum cream"));
        CHECK(book.doubts.names(BookPart::formulas, "sandwich"));
        CHECK(book.doubts.names(BookPart::orders, "filled"));
        CHECK(book.doubts.names(BookPart::menus, "counter"));
        CHECK_FALSE(book.doubts.names(BookPart::orders, "plain"));
        CHECK(book.offers.size() == 3);
        CHECK(book.offers_of[1].size() == 1); // of saffron, which is second now
    }
    SUBCASE("one of its offers") {
        Book book = bakery();
        offer(book, "plum", "5 kg", "9.00").is_in_doubt = true;
        CHECK(left(book) == without_filled);
    }
    SUBCASE("a name in a formula that stands for nothing") {
        Book book = bakery();
        book.formulas[1].lines[0].item.name = "plumb";
        CHECK(left(book) == "flour, plum, saffron, box, shell, plain");
    }
    SUBCASE("a supply that an item is packed in") {
        Book book = bakery();
        book.ingredients[3].is_in_doubt = true;
        CHECK(left(book) == "flour, plum, saffron, shell, plum cream, plain");
    }
    SUBCASE("what nobody uses") {
        Book book = bakery();
        book.ingredients[2].is_in_doubt = true;
        CHECK(left(book) ==
              "flour, plum, box, shell, plum cream, sandwich, plain, filled, counter");
    }
    SUBCASE("an order, a menu") {
        Book book = bakery();
        book.orders[0].is_in_doubt = book.menus[0].is_in_doubt = true;
        CHECK(left(book) == "flour, plum, saffron, box, shell, plum cream, sandwich, filled");
    }
}

TEST_CASE("of two things of one name neither is meant") {
    Book book = bakery();
    formula(book, "plum cream", {{"plum", "2 kg"}});
    CHECK(left(book) == "flour, plum, saffron, box, shell, plain");
    Book again = bakery();
    food(again, "shell", "1 kg", "1.00");
    CHECK(left(again) == "flour, plum, saffron, box, plum cream");
}

TEST_CASE("an offer of nothing that is known may be one of anything that is bought") {
    Book book = bakery();
    offer(book, "plumb", "5 kg", "9.00");
    CHECK(left(book).empty());
    Book lost = bakery();
    lost.doubts.add(BookPart::prices);
    CHECK(left(lost).empty());
    CHECK(lost.doubts.names(BookPart::orders, "plain"));
}

TEST_CASE("a yield test in doubt holds up what cites it") {
    Book book = bakery();
    yield_test(book, "plums of may", "plum", "10 kg").stated_usable = 8000;
    yield_test(book, "saffron of may", "saffron", "1 kg").stated_usable = 900;
    book.ingredients[1].yield_source = by_test("plums of may");
    book.ingredients[2].yield_source = by_test();
    SUBCASE("by its name") {
        book.yield_tests[0].is_in_doubt = true;
        CHECK(left(book) == without_filled);
        CHECK(book.doubts.names(BookPart::yields, "plums of may"));
    }
    SUBCASE("as one of all that were made of it") {
        book.yield_tests[1].is_in_doubt = true;
        CHECK(left(book) ==
              "flour, plum, box, shell, plum cream, sandwich, plain, filled, counter");
    }
    SUBCASE("as one that may have been of it") {
        book.yield_tests[0].item = named("plumb");
        CHECK(left(book) == "flour, box, shell, plain");
    }
    SUBCASE("as one that could not be read") {
        book.doubts.add(BookPart::yields);
        CHECK(left(book) ==
              "flour, plum, box, shell, plum cream, sandwich, plain, filled, counter");
    }
}

TEST_CASE("the stock is in doubt as a whole, and only by its own errors") {
    Book book = bakery();
    book.stock.items = {{named("flour"), {}, quantity("1 kg")},
                        {named("plum"), {}, quantity("2 kg")}};
    book.ingredients[1].is_in_doubt = true;
    CHECK(left(book) == without_filled);
    CHECK_FALSE(book.doubts.any(BookPart::stock));
    CHECK(book.stock.items.size() == 1);
    Book other = bakery();
    other.stock.items = {{named("flour"), {}, quantity("1 kg")},
                         {named("plumb"), {}, quantity("2 kg")}};
    CHECK(left(other) == all);
    CHECK(other.doubts.any(BookPart::stock));
    CHECK(other.stock.items.empty());
}

TEST_CASE("everything stands on the shop, so that nothing is taken out where that is in doubt") {
    Book book = bakery();
    book.shop.paid_by = named("no such card");
    (void)link(book);
    keep_sound_part(book);
    CHECK(book.doubts.any(BookPart::shop));
    CHECK(book.orders.size() == 2);
}

TEST_CASE("a chain of ten thousand formulas is gone through at once") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    formula(book, "0", {{"flour", "1 kg"}}).is_in_doubt = true;
    for (int i = 1; i < 10'000; ++i) {
        std::string const below = std::to_string(i - 1);
        formula(book, std::to_string(i), {{below, "1 kg"}});
    }
    CHECK(left(book) == "flour");
}
