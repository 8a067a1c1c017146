#include "books.hpp"

#include <groat/model/base_links.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// By what a food of these packs is costed.
Dimension base(std::initializer_list<std::string_view> packs, std::string_view each = "",
               std::string_view of_a_cup = "") {
    Book book = a_book();
    Ingredient& thing = food(book, "thing");
    if (!each.empty()) thing.grams_each = number(each);
    if (!of_a_cup.empty()) thing.densities.push_back(density(of_a_cup));
    for (std::string_view const pack : packs) offer(book, "thing", pack, "1.00");
    link_well(book);
    return book.ingredients.front().costed_by();
}

} // namespace

TEST_CASE("food is costed by mass unless all its packs are counted or measured by volume") {
    CHECK(base({}) == Dimension::mass);
    CHECK(base({"1 kg"}) == Dimension::mass);
    CHECK(base({"100"}) == Dimension::count);
    CHECK(base({"100", "4 x 50"}) == Dimension::count);
    CHECK(base({"8 fl oz", "1 L"}) == Dimension::volume);
    CHECK(base({"100", "1 kg"}) == Dimension::mass);
    CHECK(base({"100", "1 L"}) == Dimension::mass);
    CHECK(base({"100", "1 L", "100"}) == Dimension::mass);
}

TEST_CASE("a fact that gives the mass makes it costed by mass, as ever") {
    CHECK(base({"100"}, "12") == Dimension::mass);
    CHECK(base({"8 fl oz"}, "", "208 g / cup") == Dimension::mass);
    CHECK(base({"8 fl oz"}, "12") == Dimension::volume); // that of one does not tell that of a cup
}

TEST_CASE("what was paid counts as well as what is offered") {
    Book book = a_book();
    food(book, "egg", "30", "9.00");
    receipt(book, "2026-11-20", "egg", "12", 1, "4.00");
    link_well(book);
    CHECK(book.ingredients.front().costed_by() == Dimension::count);
    receipt(book, "2026-11-21", "egg", "1 kg", 1, "8.00");
    link_well(book);
    CHECK(book.ingredients.front().costed_by() == Dimension::mass);
}

TEST_CASE("a supply is always counted") {
    Book book = a_book();
    supply(book, "box", "50", "20.00");
    link_well(book);
    CHECK(book.ingredients.front().costed_by() == Dimension::count);
}

TEST_CASE("what a yield test weighs is costed by mass") {
    Book book = a_book();
    food(book, "leek", "12", "9.00");
    yield_test(book, "leeks in May", "leek", "2 kg");
    trim(book.yield_tests.front(), "tops", "800 g");
    link_well(book);
    CHECK(book.ingredients.front().costed_by() == Dimension::mass);
}
