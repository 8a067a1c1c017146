#include "books.hpp"

#include <groat/price/contents.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Book sandwich_book() {
    Book book = a_book();
    food(book, "wheat flour", "1 kg", "1.00").allergens = {find_allergen("wheat")};
    food(book, "butter", "1 kg", "9.00").allergens = {find_allergen("milk")};
    food(book, "almond", "1 kg", "12.00").allergens = {find_allergen("almond")};
    food(book, "plum", "1 kg", "4.00").keeping = {KeepAt::cold, 3}; // in the store
    Formula& shell = formula(book, "shell", {{"wheat flour", "1 kg"}, {"almond", "200 g"}});
    shell.makes = quantity("40");
    shell.keeping = {KeepAt::room, 14};
    Formula& filling = formula(book, "filling", {{"plum", "1 kg"}, {"butter", "100 g"}});
    filling.keeping = {KeepAt::cold, 4};
    formula(book, "sandwich", {{"shell", "2"}, {"filling", "16 g"}}).makes = quantity("1");
    link_well(book);
    return book;
}

std::vector<std::string_view> allergens_of(Contents const& contents) {
    std::vector<std::string_view> names;
    for (Allergen const* each : contents.allergens) names.push_back(each->name);
    return names;
}

} // namespace

TEST_CASE("allergens come up from everything that an item is made of") {
    Book const book = sandwich_book();
    CHECK(allergens_of(contents_of(book, index_of(book, "sandwich"))) ==
          std::vector<std::string_view>{"milk", "wheat", "almond"});
    CHECK(allergens_of(contents_of(book, index_of(book, "filling"))) ==
          std::vector<std::string_view>{"milk"});
}

TEST_CASE("a sandwich that does not say how it keeps keeps as its filling does") {
    Book const book = sandwich_book();
    Keeping const keeping = contents_of(book, index_of(book, "sandwich")).keeping;
    CHECK(keeping.at == KeepAt::cold);
    CHECK(keeping.days == 4);
}

TEST_CASE("what an item says itself goes before what is in it") {
    Book book = sandwich_book();
    book.formulas[2].keeping = {KeepAt::cool, 2};
    Keeping const keeping = contents_of(book, 2).keeping;
    CHECK(keeping.at == KeepAt::cool);
    CHECK(keeping.days == 2);
    CHECK(contents_of(book, 2).allergens.size() == 3);
}

TEST_CASE("how an ingredient is kept in the store says nothing about the cake") {
    Book const book = sandwich_book();
    CHECK(contents_of(book, index_of(book, "shell")).keeping.at == KeepAt::room);
}

TEST_CASE("a filling that is met once under a keeping and once without it counts") {
    // the cake states how it keeps, the plate of cake and filling does not
    Book book = sandwich_book();
    formula(book, "cake", {{"filling", "100 g"}}).keeping = {KeepAt::room, 9};
    formula(book, "plate", {{"filling", "10 g"}, {"cake", "100 g"}});
    formula(book, "other plate", {{"cake", "100 g"}, {"filling", "10 g"}});
    link_well(book);
    for (std::string_view const name : {"plate", "other plate"}) {
        CAPTURE(name);
        Keeping const keeping = contents_of(book, index_of(book, name)).keeping;
        CHECK(keeping.at == KeepAt::cold);
        CHECK(keeping.days == 4);
    }
}

namespace {

/// Cream is kept cold; a filling of it goes between two wafers, bought.
Book with_cream() {
    Book book = a_book();
    food(book, "cream").keeping.at = KeepAt::cold;
    food(book, "wafer");
    formula(book, "filling", {{"cream", "900 g"}});
    formula(book, "sandwich", {{"wafer", "20 g"}, {"filling", "30 g"}}).makes = quantity("1");
    return book;
}

std::string cold(Book& book) {
    if (book.shop.ovens.empty()) oven(book, "deck", "3 kW", "50 %", "10", "0.30");
    link_well(book);
    std::string text;
    for (Diagnostic const& each : cold_findings(book).sorted()) text += each.what + "\n";
    return text;
}

} // namespace

TEST_CASE("what holds a cold ingredient unbaked and is not kept cold is told, where it goes in") {
    Book book = with_cream();
    CHECK(cold(book) ==
          "'filling' holds 'cream', which is kept cold, and is neither baked nor said to "
          "be kept cold\n");
    // said of the filling, it holds for what it goes into
    book.formulas[0].keeping.at = KeepAt::cold;
    CHECK(cold(book) == "");
    // unless that says otherwise
    book.formulas[1].keeping.at = KeepAt::cool;
    CHECK(cold(book) ==
          "'sandwich' holds 'cream', which is kept cold, and is neither baked nor said "
          "to be kept cold\n");
    book.formulas[1].keeping = {KeepAt::frozen, {}};
    CHECK(cold(book) == "");
    // days alone do not say how
    book.formulas[1].keeping = {{}, 3};
    CHECK(says(cold(book), "'sandwich' holds 'cream'"));
    // nor does it help that only what lies between says otherwise
    book.formulas[1].keeping.at = KeepAt::cool;
    formula(book, "box", {{"sandwich", "2"}}).makes = quantity("1");
    CHECK(says(cold(book), "'box' holds 'cream'"));
}

TEST_CASE("what is baked need not be kept cold, nor what is baked within it") {
    Book book = with_cream();
    book.formulas[1].oven = baked_in("deck", "10", "20 each");
    CHECK(cold(book) == "");
    // what is spread on it afterwards does
    formula(book, "iced", {{"sandwich", "1"}, {"filling", "5 g"}}).makes = quantity("1");
    CHECK(says(cold(book), "'filling' holds 'cream'"));
}

TEST_CASE("what is served the day it is made, and kept nowhere, is not asked how it is kept") {
    Book book = with_cream();
    book.formulas[1].keeping = {{}, 1};
    CHECK(cold(book) == "");
    book.formulas[1].keeping = {KeepAt::room, 1};
    CHECK(says(cold(book), "'sandwich' holds 'cream'"));
}

TEST_CASE("a part that is sold by itself is looked at as well") {
    Book book = with_cream();
    book.formulas[1].oven = baked_in("deck", "10", "20 each");
    sold_as(book.formulas[0], "jar", "200 g");
    CHECK(says(cold(book), "'filling' holds 'cream'"));
}
