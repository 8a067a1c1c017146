#include "books.hpp"
#include "random_book.hpp"

#include <groat/cost/graph.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

Book with_flour() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    return book;
}

std::vector<std::string> names(Book const& book, FormulaOrder const& order) {
    std::vector<std::string> result;
    for (std::size_t const index : order.sequence) result.push_back(book.formulas[index].name);
    return result;
}

} // namespace

TEST_CASE("each formula comes after those that it uses, however the book is written") {
    Book book = with_flour();
    formula(book, "sandwich", {{"shell", "48 g"}, {"filling", "16 g"}});
    formula(book, "filling", {{"curd", "10 g"}});
    formula(book, "shell", {{"flour", "1 kg"}});
    formula(book, "curd", {{"flour", "1 kg"}});
    link_well(book);
    CHECK(names(book, formula_order(book)) ==
          std::vector<std::string>{"shell", "curd", "filling", "sandwich"});
}

TEST_CASE("in any book each formula comes once, after all that it uses") {
    for_random_books(200, [](Book const& book) {
        FormulaOrder const order = formula_order(book);
        REQUIRE(order.cycles.empty());
        REQUIRE(order.sequence.size() == book.formulas.size());
        std::vector<bool> is_known(book.formulas.size(), false);
        for (std::size_t const index : order.sequence) {
            REQUIRE(!is_known[index]);
            for (Line const& each : book.formulas[index].lines)
                if (each.of == Line::Of::formula) REQUIRE(is_known[each.item.index]);
            is_known[index] = true;
        }
    });
}

TEST_CASE("formulas that go round in a circle are told with the way round") {
    Book book = with_flour();
    formula(book, "shell", {{"flour", "1 kg"}, {"crumb", "10 g"}});
    formula(book, "crumb", {{"trimmings", "1 kg"}});
    formula(book, "trimmings", {{"shell", "100 g"}});
    link_well(book);
    FormulaOrder const order = formula_order(book);
    CHECK(order.sequence.empty());
    auto const told = order.cycles.sorted();
    REQUIRE(told.size() == 1);
    CHECK(told[0].code == "formula-cycle");
    CHECK(told[0].what == "formulas go round in a circle: 'shell' uses 'crumb' uses 'trimmings' "
                          "uses 'shell'");
}

TEST_CASE("a formula that uses itself is a circle of one") {
    Book book = with_flour();
    formula(book, "sourdough", {{"flour", "1 kg"}, {"sourdough", "100 g"}});
    link_well(book);
    auto const told = formula_order(book).cycles.sorted();
    REQUIRE(told.size() == 1);
    CHECK(told[0].what == "formulas go round in a circle: 'sourdough' uses 'sourdough'");
}

TEST_CASE("what stands on a circle is left out with it, and nothing else is") {
    Book book = with_flour();
    formula(book, "gift box", {{"cake", "100 g"}});
    formula(book, "cake", {{"a", "100 g"}});
    formula(book, "a", {{"b", "100 g"}});
    formula(book, "b", {{"a", "100 g"}, {"bread", "1 g"}});
    formula(book, "bread", {{"flour", "1 kg"}});
    formula(book, "late", {{"b", "1 g"}});
    link_well(book);
    FormulaOrder const order = formula_order(book);
    CHECK(names(book, order) == std::vector<std::string>{"bread"});
    CHECK(order.cycles.errors() == 1);
}

TEST_CASE("two circles are told as two") {
    Book book = with_flour();
    formula(book, "a", {{"b", "1 g"}});
    formula(book, "b", {{"a", "1 g"}});
    formula(book, "c", {{"c", "1 g"}});
    link_well(book);
    CHECK(formula_order(book).cycles.errors() == 2);
}

TEST_CASE("a chain of ten thousand formulas is walked without running out of stack") {
    Book book = with_flour();
    constexpr std::size_t length = 10'000;
    book.formulas.reserve(length);
    for (std::size_t i = 0; i < length; ++i) {
        std::string const next = i + 1 < length ? fmt::format("step {}", i + 1) : "flour";
        formula(book, fmt::format("step {}", i), {{next, "1 kg"}});
    }
    link_well(book);
    FormulaOrder const order = formula_order(book);
    REQUIRE(order.sequence.size() == length);
    CHECK(order.sequence.front() == length - 1);
    CHECK(order.sequence.back() == 0);
}
