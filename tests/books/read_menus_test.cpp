#include "reading.hpp"

#include <groat/books/read_menus.hpp>

#include <doctest/doctest.h>

#include <string>
#include <variant>

using groat::FoodCostShare;
using groat::Margin;
using groat::Menu;
using groat::Number;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Menu menu(std::string const& text) { return read_menu(node(text), reading); }
};

/// What is found in a menu of one item; what is added begins in line 3.
std::string menu_marks(std::string const& text) {
    Reader desk;
    (void)desk.menu("menu: m\nitems: [{item: a, price: 1.00}]\n" + text + "\n");
    return desk.marked();
}

/// What is found in the items of a menu, which begin in line 2, column 9.
std::string item_marks(std::string const& items) {
    Reader desk;
    (void)desk.menu("menu: m\nitems: [" + items + "]\n");
    return desk.marked();
}

} // namespace

TEST_CASE("every field of a menu arrives") {
    Reader desk;
    Menu const menu = desk.menu(R"(
menu: winter counter
period: november 2026
prices: with
price: {food cost: 30 %, to: 0.25, toward: nearest}
paid by: card
items per payment: 2.5
categories:
  pastry: {margin: 25 %}
  drinks: {}
items:
  - {item: rye-plum sandwich, as: box of 6, category: pastry, price: 14.50, sold: 10 dozen}
  - {item: lemon tart, name: lemon tart with cream, price: 5.50, sold: 0, target: {margin: 50 %}, tax: reduced}
fixed costs: {rent: 900.00, insurance: 80.50}
wanted profit: 1500.00
tax on profit: 20 %
)");
    CHECK(desk.said().empty());
    CHECK(menu.name == "winter counter");
    CHECK(menu.period == "november 2026");
    CHECK(menu.is_tax_contained == true);
    REQUIRE(menu.price.target.has_value());
    CHECK(std::get<FoodCostShare>(*menu.price.target).value() == Number(3) / 10);
    CHECK(menu.price.point->to_nearest);
    REQUIRE(menu.paid_by.size() == 1);
    CHECK(menu.paid_by.front().how.name == "card");
    CHECK(menu.paid_by.front().share.value() == 1);
    CHECK(menu.items_per_payment == Number(5) / 2);
    REQUIRE(menu.categories.size() == 2);
    CHECK(menu.categories[0].name == "pastry");
    CHECK(std::get<Margin>(*menu.categories[0].price.target).value() == Number(1) / 4);
    CHECK(!menu.categories[1].price.target.has_value());
    REQUIRE(menu.items.size() == 2);
    CHECK(menu.items[0].item.name == "rye-plum sandwich");
    CHECK(menu.items[0].sale_unit.name == "box of 6");
    CHECK(menu.items[0].category.name == "pastry");
    CHECK(menu.items[0].price->amount() == Number(29) / 2);
    CHECK(menu.items[0].sold == 120);
    CHECK(menu.items[0].name.empty());
    CHECK(menu.items[1].name == "lemon tart with cream");
    CHECK(menu.items[1].sold == 0);
    CHECK(std::get<Margin>(*menu.items[1].target.target).value() == Number(1) / 2);
    CHECK(menu.items[1].tax.name == "reduced");
    CHECK(menu.has_sales());
    CHECK(menu.fixed_costs->amount() == Number(1961) / 2);
    CHECK(menu.wanted_profit.amount() == 1500);
    CHECK(menu.tax_on_profit.value() == Number(1) / 5);
}

TEST_CASE("the least menu is a name and an item") {
    Reader desk;
    Menu const menu = desk.menu("menu: m\nitems: [{item: a}]\n");
    CHECK(desk.said().empty());
    CHECK(menu.is_tax_contained == std::nullopt);
    CHECK(menu.items_per_payment == std::nullopt);
    CHECK(!menu.has_sales());
    CHECK(menu.fixed_costs == std::nullopt);
    CHECK(menu.items.front().price == std::nullopt);
    CHECK(menu.wanted_profit.is_zero());
}

TEST_CASE("a menu may be paid in several ways, which are all of what is paid") {
    Reader desk;
    Menu const menu =
        desk.menu("menu: m\nitems: [{item: a}]\npaid by: {card: 62.5 %, cash: 37.5 %}\n");
    CHECK(desk.said().empty());
    REQUIRE(menu.paid_by.size() == 2);
    CHECK(menu.paid_by[1].how.name == "cash");
    CHECK(menu.paid_by[1].share.value() == Number(3) / 8);
    CHECK(menu_marks("paid by: {card: 60 %, cash: 30 %}") == "3:10+1 shares-not-all");
    CHECK(menu_marks("paid by: {}") == "3:10+1 shares-not-all");
    CHECK(menu_marks("paid by: {card: 60}").find("3:17+2") == 0);
    CHECK(menu_marks("paid by: {card: 160 %}") == "3:17+5 rate-out-of-range");
}

TEST_CASE("what is missing from a menu, or has no place there, is told where") {
    Reader desk;
    (void)desk.menu("{}");
    CHECK(desk.marked() == "1:1+1 missing-key 1:1+1 missing-key");
    CHECK(menu_marks("itmes: []") == "3:1+5 unknown-key");
    CHECK(menu_marks("prices: inside") == "3:9+6 unknown-word");
    CHECK(menu_marks("items per payment: 0") == "3:20+1 not-positive");
    CHECK(menu_marks("categories: [pastry]") == "3:13+1 wrong-kind");
    CHECK(menu_marks("categories: {pastry: 25 %}") == "3:22+4 wrong-kind");
    CHECK(menu_marks("categories: {pastry: {margn: 25 %}}") == "3:23+5 unknown-key");
    CHECK(menu_marks("price: {margin: 30 %, markup: 40 %}") == "3:23+6 not-both");
    CHECK(menu_marks("wanted profit: lots") == "3:1+13 no-sales 3:16+4 bad-money");
    CHECK(menu_marks("fixed costs: 900.00") == "3:1+11 no-sales 3:14+6 wrong-kind");
    CHECK(menu_marks("tax on profit: 100 %") == "3:16+5 rate-out-of-range");
    Reader empty;
    (void)empty.menu("menu: m\nitems: []\n");
    CHECK(empty.marked() == "2:8+1 missing-value");
}

TEST_CASE("what is wrong with an item is told at its own characters") {
    CHECK(item_marks("{price: 1.00}") == "2:9+1 missing-key");
    CHECK(item_marks("{item: a, price: 1.005}") == "2:26+5 not-payable");
    CHECK(item_marks("{item: a, price: -1}").find("2:26+2") == 0);
    CHECK(item_marks("{item: a, sold: 1.5}") == "2:25+3 not-whole");
    CHECK(item_marks("{item: a, sold: -3}") == "2:25+2 not-positive");
    CHECK(item_marks("{item: a, sold: 3 kg}") == "2:25+4 wrong-dimension");
    CHECK(item_marks("{item: a, target: {margin: 120 %}}") == "2:36+5 rate-out-of-range");
    CHECK(item_marks("{item: a, count: 4}") == "2:19+5 unknown-key");
    CHECK(item_marks("a") == "2:9+1 wrong-kind");
}

TEST_CASE("a given price is no target of a menu, of a category or of an item") {
    CHECK(menu_marks("price: {given: 5.00}") == "3:8+1 given-as-target");
    CHECK(menu_marks("categories: {pastry: {given: 5.00}}") == "3:22+1 given-as-target");
    CHECK(item_marks("{item: a, target: {given: 5.00}}") == "2:27+1 given-as-target");
}

TEST_CASE("sales are counted for all items or for none") {
    Reader desk;
    (void)desk.menu("menu: m\nitems:\n  - {item: a}\n  - {item: b, sold: 3}\n  - {item: c}\n");
    CHECK(desk.marked() == "3:5+1 missing-sold 5:5+1 missing-sold");
    CHECK(desk.said().find("it is not said how many of 'a' were sold") != std::string::npos);
}

TEST_CASE("fixed costs without sales say nothing, which is told") {
    CHECK(menu_marks("fixed costs: {rent: 900.00}") == "3:1+11 no-sales");
    Reader desk;
    (void)desk.menu("menu: m\nitems: [{item: a, sold: 4}]\nfixed costs: {rent: 900.00}\n");
    CHECK(desk.said().empty());
}
