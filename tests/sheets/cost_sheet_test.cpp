#include "random_book.hpp"
#include "sheets.hpp"

#include <groat/sheets/cost_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Sheet sheet_of(Book const& book, std::string_view item) {
    Costing const costing(linked(book), today);
    return cost_sheet(item_cost(costing, item), costing);
}

Book cookie_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.portion = quantity("25 g");
    cookie.standard_run = 80;
    lose(cookie, "baking", "12 %", LossStage::after_portioning);
    book.shop.price = at_food_cost("25 %");
    link_well(book);
    return book;
}

} // namespace

TEST_CASE("an item's sheet says what a piece weighs, costs and sells for") {
    // 25 g at 10.00 a kg: 0.25; 25 g less 12 %: 22 g; at 25 % food cost 1.00, all of the cost is food
    Sheet const sheet = sheet_of(cookie_book(), "cookie");
    CHECK(sheet.title == "Cost of cookie");
    CHECK(shown(sheet, "item", "run") == "80");
    CHECK(shown(sheet, "item", "portion") == "25 g");
    CHECK(shown(sheet, "item", "piece") == "22 g");
    CHECK(shown(sheet, "item", "target") == "a food cost of 25 %");
    CHECK(shown(sheet, "item", "price") == "1.00");
    CHECK(shown(sheet, "item", "food_cost") == "25.0");
    CHECK(shown(sheet, "item", "margin") == "75.0");
    CHECK(shown(sheet, "item", "markup") == "300.0");
    CHECK(shown(table(sheet, "costs"), "cost", "piece") == "0.2500");
    CHECK(shown(table(sheet, "costs"), "cost", "all") == "20.00");
    CHECK(section<Remarks>(sheet, "run_remark") == nullptr);
}

TEST_CASE("without a standard run the sheet says that one piece bears it all") {
    Book book = cookie_book();
    book.formulas[0].standard_run.reset();
    Sheet const sheet = sheet_of(book, "cookie");
    REQUIRE(section<Remarks>(sheet, "run_remark") != nullptr);
    CHECK(says(section<Remarks>(sheet, "run_remark")->lines[0], "standard run"));
}

TEST_CASE("without a target the sheet has costs and no price") {
    Book book = cookie_book();
    book.shop.price = {};
    Sheet const sheet = sheet_of(book, "cookie");
    CHECK(shown(sheet, "item", "price").empty());
    CHECK(find_row(table(sheet, "costs"), "net") == nullptr);
    CHECK(shown(table(sheet, "costs"), "cost", "piece") == "0.2500");
}

TEST_CASE("on any item's sheet the printed figures of a column add up to its printed total") {
    for_random_books(200, [](Book const& book) {
        for (Formula const& formula : book.formulas) {
            Sheet const sheet = sheet_of(book, formula.name);
            REQUIRE(what_does_not_add_up(sheet, book.shop.currency.code()) == "");
            REQUIRE(what_does_not_add_up(sheet, "%") == "");
        }
    });
}
