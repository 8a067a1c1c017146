#include <groat/sheets/make_sheet.hpp>

#include "random_book.hpp"
#include "sheets.hpp"

#include <groat/paper/json.hpp>
#include <groat/paper/text.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Sheet sheet_of(Book const& book) {
    Costing const costing(linked(book), today);
    std::vector<Order const*> orders;
    for (Order const& order : book.orders) orders.push_back(&order);
    auto const plan =
        calculated([&](Diagnostics& found) { return produce(costing, orders, found); });
    return make_sheet(plan, costing);
}

Book bakery() {
    Book book = a_book();
    Ingredient& flour = food(book, "flour", "25 kg", "20.00");
    flour.allergens = {find_allergen("wheat")};
    Ingredient& cheese = food(book, "cream cheese", "1 kg", "9.00");
    cheese.allergens = {find_allergen("milk")};
    supply(book, "box", "100", "40.00");
    role(book, "baker", "20.00");
    (void)oven(book, "deck", "6 kW", "50 %", "30", "0.20");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("25 g");
    shell.oven = baked_in("deck", "10", "40");
    shell.labour = {task("mix", "baker", "12"), rest("chill", "60")};
    Formula& filling = formula(book, "filling", {{"cream cheese", "1 kg"}});
    filling.keeping = {KeepAt::cold, 4};
    Formula& sandwich = formula(book, "sandwich", {{"shell", "2"}, {"filling", "20 g"}});
    sandwich.makes = quantity("1");
    sold_as(sandwich, "box of 12", "12").packing = {uses("box", "1", Per::sale_unit)};
    Order& first = order(book, "1");
    first.due = day("2026-12-10");
    first.notes = "Ring the bell.";
    wants(first, "sandwich", 4, "box of 12");
    wants(order(book, "2"), "sandwich", 1, "box of 12");
    link_well(book);
    return book;
}

} // namespace

TEST_CASE("the sheet names its orders, what is made in order, and what is packed for whom") {
    Sheet const sheet = sheet_of(bakery());
    CHECK(sheet.title == "To make for 1 and 2");
    CHECK(shown(table(sheet, "orders"), "1", "due") == "10 December 2026");
    CHECK(shown(table(sheet, "orders"), "1", "notes") == "Ring the bell.");
    Table const& works = table(sheet, "works");
    REQUIRE(works.rows.size() == 3);
    CHECK(works.rows.front().key == "shell");
    CHECK(works.rows.back().key == "sandwich");
    CHECK(shown(works, "shell", "start") == "120"); // 5 boxes of 12, two shells each
    CHECK(shown(works, "shell", "batches") == "3");
    CHECK(shown(table(sheet, "packing"), "1 Sandwich, box of 12", "with") == "4 × box");
    CHECK(shown(table(sheet, "packing"), "2 Sandwich, box of 12", "count") == "1");
}

TEST_CASE("ovens and hands are told in minutes and hours") {
    Sheet const sheet = sheet_of(bakery());
    // three loads of 40, 10 minutes each, after 30 minutes of preheating; three batches at 12 minutes
    CHECK(shown(table(sheet, "ovens"), "shell", "loads") == "3");
    CHECK(shown(table(sheet, "ovens"), "shell", "minutes") == "30.0");
    CHECK(shown(table(sheet, "ovens"), "deck", "minutes") == "60.0");
    CHECK(shown(table(sheet, "hours"), "baker", "minutes") == "36.0");
    CHECK(shown(table(sheet, "hours"), "baker", "hours") == "0.60");
    CHECK(shown(table(sheet, "hours"), "total", "minutes") == "36.0");
}

TEST_CASE("what is taken from the store is told in grams and packs") {
    Sheet const sheet = sheet_of(bakery());
    CHECK(shown(table(sheet, "store"), "flour", "bought") == "3000");
    CHECK(shown(table(sheet, "store"), "flour", "packs") == "1 (0.12) of 25 kg");
    CHECK(shown(table(sheet, "supplies"), "box", "count") == "5");
}

TEST_CASE("allergens and the cold are minded, and no money stands on the sheet") {
    Sheet const sheet = sheet_of(bakery());
    std::string const text = to_text(sheet);
    CHECK(says(text, "What is made here contains milk, wheat."));
    CHECK(says(text, "5 °C / 41 °F"));
    CHECK(!says(to_json(sheet), "USD"));
}

TEST_CASE("a plan without ovens, hands and supplies has no empty tables") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    formula(book, "bun", {{"flour", "50 g"}}).makes = quantity("1");
    wants(order(book), "bun", 3);
    link_well(book);
    Sheet const sheet = sheet_of(book);
    for (std::string_view const key : {"ovens", "labour", "hours", "supplies"})
        CHECK(section<Table>(sheet, key) == nullptr);
    CHECK(section<Table>(sheet, "store") != nullptr);
}

TEST_CASE("in any book printed minutes add up, and every row has a cell for each column") {
    for_random_books(100, [](Book const& book) {
        Sheet const sheet = sheet_of(book);
        if (Table const* hours = section<Table>(sheet, "hours")) {
            REQUIRE(what_does_not_add_up(*hours, "min").empty());
            REQUIRE(what_does_not_add_up(*hours, "h").empty());
        }
        if (Table const* ovens = section<Table>(sheet, "ovens")) {
            Number printed_minutes;
            for (Row const& row : ovens->rows) {
                Number const minutes = number(std::get<Figure>(row.cells[4]).shown);
                if (row.kind != Row::Kind::total) {
                    printed_minutes += minutes;
                    continue;
                }
                REQUIRE(printed_minutes == minutes);
                printed_minutes = 0;
            }
        }
        for (Section const& each : sheet.sections)
            if (auto const* lines = std::get_if<Table>(&each))
                for (Row const& row : lines->rows)
                    REQUIRE(row.cells.size() == lines->columns.size());
    });
}
