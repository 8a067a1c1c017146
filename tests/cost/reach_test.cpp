#include <groat/cost/reach.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// A cake of dough and icing in a box on a doily; dough takes flour and, for each batch, paper.
Book bakery() {
    Book book = a_book();
    food(book, "flour");
    food(book, "sugar");
    food(book, "saffron");
    supply(book, "paper", "100", "1.00");
    supply(book, "box", "100", "1.00");
    supply(book, "tray", "100", "1.00");
    formula(book, "dough", {{"flour", "1 kg"}}).consumables.push_back(uses("paper", "1"));
    formula(book, "icing", {{"sugar", "1 kg"}});
    Formula& cake = formula(book, "cake", {{"dough", "400 g"}, {"icing", "50 g"}});
    cake.makes = quantity("1");
    sold_as(cake, "boxed", "1").packing.push_back(uses("box", "1", Per::sale_unit));
    sold_as(cake, "on a tray", "1").packing.push_back(uses("tray", "1", Per::sale_unit));
    formula(book, "risotto", {{"saffron", "1 g"}});
    link_well(book);
    return book;
}

std::string names(Reach const& reach, Book const& book) {
    std::string text;
    for (std::size_t i = 0; i < book.formulas.size(); ++i)
        if (reach.formulas[i]) text += book.formulas[i].name + " ";
    text += "|";
    for (std::size_t i = 0; i < book.ingredients.size(); ++i)
        if (reach.bought[i]) text += " " + book.ingredients[i].name;
    return text;
}

} // namespace

TEST_CASE("a thing reaches its parts, what goes into them, and what packs it as it is sold") {
    Book const book = bakery();
    CHECK(names(reach_of(book, {sale(book, "cake", 1, "boxed")}), book) ==
          "dough icing cake | flour sugar paper box");
    CHECK(names(reach_of(book, {sale(book, "cake", 1)}), book) ==
          "dough icing cake | flour sugar paper");
}

TEST_CASE("several things reach what any of them does, and nothing reaches nothing") {
    Book const book = bakery();
    CHECK(names(reach_of(book, {sale(book, "icing", 1), sale(book, "risotto", 1)}), book) ==
          "icing risotto | sugar saffron");
    CHECK(names(reach_of(book, {}), book) == "|");
}

TEST_CASE("formulas that go round in a circle are reached once") {
    Book book = bakery();
    book.formulas[0].lines.push_back(line({"cake", "1"}));
    link_well(book);
    CHECK(names(reach_of(book, {sale(book, "dough", 1)}), book) ==
          "dough icing cake | flour sugar paper");
}
