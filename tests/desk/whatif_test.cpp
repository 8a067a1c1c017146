#include <groat/desk/answer.hpp>
#include <groat/desk/whatif.hpp>

#include "sheets.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Buns and jam, an order of both, a menu of buns, and a scenario of dear flour.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "1 kg", "2.00");
    food(book, "plum", "1 kg", "4.00");
    food(book, "salt"); // nobody sells it
    for (char const* name : {"bun", "jam"}) {
        Formula& made =
            formula(book, name, {{std::string_view(name) == "bun" ? "flour" : "plum", "100 g"}});
        made.makes = quantity("1");
        made.price = at_margin("50 %");
        sold_as(made, "box of 6", "6");
        sold_as(made, "bag of 4", "4");
    }
    Order& both = order(book, "both");
    both.date = day("2026-12-12");
    wants(both, "bun", 2, "box of 6");
    wants(both, "jam", 2, "bag of 4");
    wants(order(book, "one"), "bun", 2, "box of 6");
    Menu counter;
    counter.name = "counter";
    counter.items.emplace_back();
    counter.items[0].item = named("bun");
    counter.items[0].price = money("1.00");
    book.menus.push_back(std::move(counter));
    Scenario dear;
    dear.name = "dear";
    dear.changes.push_back({"flour +20 %"});
    book.scenarios.push_back(dear);
    link_well(book);
    return book;
}

template <class T> std::string refused(Result<T> const& result) {
    return result ? "given" : result.error().what;
}

} // namespace

TEST_CASE("what is looked at is an order by its id, else a menu, else an item as it is sold") {
    Book const book = bakery();
    auto const order = desk::subject_called(book, "both");
    REQUIRE(order.has_value());
    CHECK(order->words == "order both");
    CHECK(order->date == day("2026-12-12"));
    CHECK(order->is_of_many_lines);
    CHECK(!desk::subject_called(book, "one")->is_of_many_lines);
    CHECK(desk::subject_called(book, "counter")->words == "menu counter");
    CHECK(desk::subject_called(book, "bun")->words == "bun, box of 6");
    CHECK(desk::subject_called(book, "bun", "bag of 4")->words == "bun, bag of 4");
    CHECK(refused(desk::subject_called(book, "bunn")) ==
          "no order, menu or formula is called 'bunn'");
    CHECK(refused(desk::subject_called(book, "bun", "crate")) == "'bun' is not sold as 'crate'");
}

TEST_CASE("a formula is not taken for an order or menu of its name that is in doubt") {
    Book book = bakery();
    book.doubts.add(BookPart::menus, "bun");
    auto const subject = desk::subject_called(book, "bun");
    REQUIRE(!subject.has_value());
    CHECK(desk::is_as_found(subject.error()));
}

TEST_CASE("changes said and those of a scenario are tried together") {
    Book const book = bakery();
    Costing const costing(linked(book), today);
    auto const subject = desk::subject_called(book, "bun");
    std::vector<Flaw> flaws;
    auto const changes = desk::changes_said({"plum +10 %"}, costing, flaws);
    CHECK(flaws.empty());
    REQUIRE(changes.size() == 1);
    Diagnostics found;
    CHECK(desk::changed_sheet(costing, *subject, changes, "dear", found));
    CHECK(desk::changed_sheet(costing, *subject, changes, "", found));
    CHECK(refused(desk::changed_sheet(costing, *subject, {}, "deer", found)) ==
          "no scenario is called 'deer'");
    CHECK(found.empty());
}

TEST_CASE("all that is wrong with changes is told, each at its words") {
    Book const book = bakery();
    std::vector<Flaw> flaws;
    auto const changes = desk::changes_said({"flour tastes better", "flour +20 %", "yeast +5 %"},
                                            Costing(linked(book), today), flaws);
    CHECK(changes.size() == 1);
    REQUIRE(flaws.size() == 2);
    CHECK(flaws[0].what.starts_with("--change 'flour tastes better': "));
    CHECK(flaws[1].what.starts_with("--change 'yeast +5 %': "));
}

TEST_CASE("a change of a scenario that cannot be made is found at its place") {
    Book book = bakery();
    book.scenarios[0].changes.push_back({"yeast +5 %", Span{0, 7, 3, 4}});
    Diagnostics found;
    auto const sheet = desk::changed_sheet(Costing(linked(book), today),
                                           *desk::subject_called(book, "bun"), {}, "dear", found);
    REQUIRE(!sheet.has_value());
    CHECK(desk::is_as_found(sheet.error()));
    REQUIRE(found.errors() == 1);
    CHECK(found.sorted().front().where.line == 7);
}

TEST_CASE("how dear an ingredient may become is told of an item and of an order of one line") {
    Book const book = bakery();
    Costing const costing(linked(book), today);
    Diagnostics found;
    CHECK(desk::limit_sheet(costing, *desk::subject_called(book, "bun"), "flour", found));
    CHECK(desk::limit_sheet(costing, *desk::subject_called(book, "one"), "flour", found));
    CHECK(says(
        refused(desk::limit_sheet(costing, *desk::subject_called(book, "both"), "flour", found)),
        "the lines of an order share what is done once"));
    CHECK(refused(desk::limit_sheet(costing, *desk::subject_called(book, "bun"), "flower",
                                    found)) == "no ingredient is called 'flower'");
    CHECK(found.empty());
    CHECK(desk::is_as_found(
        desk::limit_sheet(costing, *desk::subject_called(book, "bun"), "salt", found).error()));
    CHECK(found.errors() == 1);
}

TEST_CASE("two days may be named in any order") {
    Book const book = bakery();
    auto const subject = desk::subject_called(book, "bun");
    Diagnostics found;
    auto const one = desk::between_sheet(linked(book), *subject, today, day("2026-12-12"), found);
    auto const other = desk::between_sheet(linked(book), *subject, day("2026-12-12"), today, found);
    REQUIRE(one.has_value());
    REQUIRE(other.has_value());
    CHECK(one->title == other->title);
    CHECK(desk::movers_sheet(Costing(linked(book), today), *subject, found));
}
