#include "books.hpp"

#include <groat/model/link.hpp>
#include <groat/model/sound_part.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

Book bread_of(std::string_view flour) {
    Book book = a_book();
    food(book, "rye flour", "10 kg", "12.00");
    formula(book, "bread", {{flour, "500 g"}}).makes = quantity("1");
    return book;
}

} // namespace

TEST_CASE("a book in which every name stands for something is one to cost by") {
    Diagnostics found;
    auto const linked = link(bread_of("rye flour"), found);
    REQUIRE(linked);
    CHECK(found.empty());
    CHECK(linked->book().formulas[0].lines[0].item.index == 0);
}

TEST_CASE("a name that stands for nothing is told, and there is nothing to cost by") {
    Diagnostics found;
    CHECK_FALSE(link(bread_of("rye flower"), found));
    CHECK(finding(found, "unknown-ingredient")->help == "did you mean 'rye flour'?");
}

TEST_CASE("a book with an error that was found before is none to cost by") {
    Diagnostics found;
    found.error({}, "bad-number", "'12..5' is no number");
    CHECK_FALSE(link(bread_of("rye flour"), found));
    CHECK(found.errors() == 1);
}

TEST_CASE("nor is one of which something could not be read, whoever else was told so") {
    Diagnostics unheard;
    Book lacking = bread_of("rye flour");
    lacking.doubts.add(BookPart::prices);
    CHECK_FALSE(link(lacking, unheard));
    Book marked = bread_of("rye flour");
    marked.formulas[0].is_in_doubt = true;
    CHECK_FALSE(link(marked, unheard));
    CHECK(unheard.empty());
}

TEST_CASE("what was found in loading is not told again, however much was") {
    Book book = bread_of("rye flour");
    for (int i = 0; i < 200; ++i)
        formula(book, fmt::format("loaf {}", i), {{fmt::format("nothing {}", i), "1 kg"}});
    Diagnostics found = link(book);
    std::size_t const told = found.sorted().size();
    CHECK_FALSE(link(book, found));
    CHECK(found.sorted().size() == told);
}

TEST_CASE("a copy with other values leaves the book as it was") {
    Diagnostics found;
    auto const book = link(bread_of("rye flour"), found);
    LinkedBook const dearer = book->with([](Book& copy) { copy.offers[0].price *= Number(2); });
    CHECK(dearer.book().offers[0].price == money("24.00"));
    CHECK(book->book().offers[0].price == money("12.00"));
}

TEST_CASE("nothing is put into a linked book or taken out of it") {
    Diagnostics found;
    auto const book = link(bread_of("rye flour"), found);
    CHECK_THROWS_AS((void)book->with([](Book& copy) { copy.formulas.clear(); }), std::logic_error);
    CHECK_THROWS_AS((void)book->with([](Book& copy) { copy.offers.emplace_back(); }),
                    std::logic_error);
}

TEST_CASE("copies share one book, also with one that was moved from") {
    Diagnostics found;
    LinkedBook first = link(bread_of("rye flour"), found).value();
    LinkedBook const second = std::move(first);
    CHECK(&first.book() == &second.book());
}

TEST_CASE("the sound part of a book is one to cost by, without what an error stands in") {
    Book book = bread_of("rye flower");
    formula(book, "crisp", {{"rye flour", "100 g"}}).makes = quantity("2");
    auto const rest = sound_part(std::move(book)); // not linked before
    REQUIRE(rest);
    CHECK(names_of(rest->book().formulas) == std::vector<std::string>{"crisp"});
    CHECK(rest->book().doubts.names(BookPart::formulas, "bread"));
}

TEST_CASE("where an error stands in the shop there is no sound part, and the book stays") {
    Book book = bread_of("rye flour");
    book.shop.is_in_doubt = true;
    CHECK_FALSE(sound_part(std::move(book)));
    CHECK(book.formulas.size() == 1); // NOLINT(bugprone-use-after-move): it was not moved from
}
