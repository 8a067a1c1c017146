#include "sheets.hpp"

#include <groat/sheets/reprice_sheet.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// Two plates that cost 1.00 and 2.00 and sell at 2.00 and 3.00, a hundred each: a margin of 40 %.
Book two_plates() {
    Book book = a_book();
    Menu menu;
    menu.name = "counter";
    for (auto const& [name, cost, price] :
         {std::tuple("tart", "1.00", "2.00"), std::tuple("soup", "2.00", "3.00")}) {
        food(book, std::string("all of ") + name, "1 kg", cost);
        formula(book, name, {{std::string("all of ") + name, "1 kg"}}).makes = quantity("1");
        MenuItem item;
        item.item = named(name);
        item.price = money(price);
        item.sold = 100;
        menu.items.push_back(std::move(item));
    }
    book.menus.push_back(std::move(menu));
    return book;
}

Sheet sheet_of(Book& book, MenuAim const& aim, RepriceLimits limits = {share_of<Share>("50 %")}) {
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const cost = cost_menu(costing, book.menus.front(), found);
    REQUIRE(cost.has_value());
    auto const result = reprice(*cost, aim, std::move(limits));
    REQUIRE(result.has_value());
    return reprice_sheet(*result, *cost, book);
}

} // namespace

TEST_CASE(
    "each price to change stands with what it does, and demand is said to be taken as it is") {
    // 0.46 on a hundred: 246 / 546 = 45.1 %; on either, and the dearer one could move further
    Book book = two_plates();
    Sheet const sheet = sheet_of(book, share_of<Margin>("45 %"));
    CHECK(shown(sheet, "aim", "before") == "40.0");
    CHECK(shown(sheet, "aim", "after") == "45.1");
    CHECK(shown(sheet, "aim", "count") == "1");
    Table const& rises = table(sheet, "rises");
    CHECK(shown(rises, "2", "price") == "3.46");
    CHECK(shown(rises, "2", "change") == "0.46");
    CHECK(shown(rises, "2", "share") == "15.3");
    CHECK(shown(rises, "total", "profit") == "46.00");
    // 1.00 each now, 1.46 then: 100 x 0.46 / 1.46 = 31.5
    CHECK(shown(rises, "2", "bears") == "31");
    Remarks const& remarks = *section<Remarks>(sheet, "remarks");
    CHECK(says(remarks.lines.front(), "No smaller set of changes does it"));
    CHECK(says(remarks.lines.back(), "Sales are taken as unchanged"));
    CHECK(what_does_not_add_up(rises, "USD") == "");
}

TEST_CASE("where the prices now reach it there is nothing to change") {
    Book book = two_plates();
    Sheet const sheet = sheet_of(book, share_of<FoodCostShare>("60 %"));
    CHECK(section<Table>(sheet, "rises") == nullptr);
    CHECK(says(section<Remarks>(sheet, "remarks")->lines.front(), "reach it already"));
}

TEST_CASE("what was asked to stay or to go first stands on the sheet") {
    Book book = two_plates();
    book.menus.front().price = at_margin("48 %"); // the tart reaches it
    RepriceLimits limits{share_of<Share>("50 %"), 1, {1}, true};
    Sheet const sheet = sheet_of(book, share_of<Margin>("45 %"), limits);
    CHECK(shown(sheet, "aim", "at_most") == "1");
    CHECK(shown(sheet, "aim", "left_alone") == "soup");
    CHECK(says(section<Remarks>(sheet, "remarks")->lines.front(), "below their target go first"));
}

TEST_CASE("without sales a rise can lose a share of them, whatever they are") {
    Book book = two_plates();
    for (MenuItem& each : book.menus.front().items) each.sold.reset();
    CHECK(shown(table(sheet_of(book, share_of<Margin>("45 %")), "rises"), "2", "bears") == "31.5");
}
