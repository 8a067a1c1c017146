#include "books.hpp"

#include <groat/model/link.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// A book in which everything is found.
Book sound_book() {
    Book book = a_book();
    food(book, "plain flour", "25 lb", "13.80");
    food(book, "butter", "1 lb", "4.20");
    supply(book, "window box", "50", "31.00");
    supply(book, "tray liner", "200", "18.00");
    role(book, "baker", "21.00");
    oven(book, "deck", "5.5 kW", "45 %", "25", "0.18");
    fee(book, "card", "2.9 %", "0.30");
    book.shop.tax.other_rates.push_back({"reduced", share_of<TaxRate>("5 %")});
    Formula& shell = formula(book, "shell", {{"plain flour", "620 g"}, {"butter", "310 g"}});
    shell.makes = quantity("40");
    shell.oven = baked_in("deck", "11", "36");
    shell.labour.push_back(task("mix", "baker", "14"));
    shell.consumables.push_back(uses("tray liner", "1", Per::load));
    SaleUnit& box = sold_as(shell, "box of 12", "12");
    box.packing.push_back(uses("window box", "1", Per::sale_unit));
    Order& wanted = order(book);
    wanted.paid_by = named("card");
    wants(wanted, "shell", 4, "box of 12");
    return book;
}

/// What linking says, all of it.
std::vector<Diagnostic> said(Book& book) { return link(book).sorted(); }

} // namespace

TEST_CASE("names are resolved once, to where they stand in the book") {
    Book book = sound_book();
    link_well(book);
    Formula const& shell = *book.find_formula("shell");
    CHECK(shell.lines[0].of == Line::Of::ingredient);
    CHECK(book.ingredients[shell.lines[1].item.index].name == "butter");
    CHECK(book.shop.ovens[shell.oven->oven.index].name == "deck");
    CHECK(book.shop.roles[shell.labour[0].role.index].name == "baker");
    CHECK(book.ingredients[shell.consumables[0].supply.index].name == "tray liner");
    Order const& wanted = *book.find_order("2026-041");
    CHECK(wanted.lines[0].item.index == index_of(book, "shell"));
    CHECK(shell.sold_as[wanted.lines[0].sale_unit.index].name == "box of 12");
    CHECK(book.shop.fees[wanted.paid_by.index].name == "card");
    CHECK(book.find_formula("shells") == nullptr);
    CHECK(book.find_order("2026-042") == nullptr);
}

TEST_CASE("offers are gathered by what they are for, in reading order") {
    Book book = a_book();
    food(book, "sugar");
    food(book, "salt");
    offer(book, "salt", "1 kg", "0.80");
    offer(book, "sugar", "10 kg", "9.00");
    offer(book, "salt", "5 kg", "3.00");
    link_well(book);
    CHECK(book.offers_of == std::vector<std::vector<std::size_t>>{{1}, {0, 2}});
}

TEST_CASE("a misspelled ingredient is told with the one that was meant") {
    Book book = sound_book();
    book.formulas[0].lines[0].item.name = "plane flour";
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "unknown-ingredient");
    CHECK(found[0].what == "no ingredient or formula is called 'plane flour'");
    CHECK(found[0].help == "did you mean 'plain flour'?");
}

TEST_CASE("what is like nothing in the books is told where to add it") {
    Book book = sound_book();
    book.formulas[0].lines[0].item.name = "xanthan";
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(says(found[0].help, "ingredients.yaml"));
}

TEST_CASE("every kind of name is suggested from its own kind") {
    struct Case {
        std::string_view code, help;
        void (*spoil)(Book&);
    };
    Case const cases[] = {
        {"unknown-role", "baker", [](Book& b) { b.formulas[0].labour[0].role = named("bakr"); }},
        {"unknown-oven", "deck", [](Book& b) { b.formulas[0].oven->oven = named("dekc"); }},
        {"unknown-supply", "tray liner",
         [](Book& b) { b.formulas[0].consumables[0].supply = named("tray linr"); }},
        {"unknown-supply", "window box",
         [](Book& b) { b.formulas[0].sold_as[0].packing[0].supply = named("windowbox"); }},
        {"unknown-sale-unit", "box of 12",
         [](Book& b) { b.orders[0].lines[0].sale_unit = named("box of 21"); }},
        {"unknown-formula", "shell", [](Book& b) { b.orders[0].lines[0].item = named("shel"); }},
        {"unknown-fee", "card", [](Book& b) { b.orders[0].paid_by = named("crad"); }},
        {"unknown-fee", "card", [](Book& b) { b.shop.paid_by = named("cart"); }},
        {"unknown-tax-rate", "reduced", [](Book& b) { b.formulas[0].tax = named("reducd"); }},
        {"unknown-tax-rate", "reduced", [](Book& b) { b.orders[0].tax = named("reduce"); }},
        {"unknown-role", "baker", [](Book& b) { b.shop.driver = named("bakre"); }},
        {"unknown-tax-rate", "reduced", [](Book& b) { b.shop.tax.delivery = named("reducd"); }},
        {"unknown-tax-rate", "reduced",
         [](Book& b) {
             b.orders[0].delivery = Delivery();
             b.orders[0].delivery->charge = DeliveryCharge::amount;
             b.orders[0].delivery->tax = named("reducd");
         }},
        {"unknown-tax-rate", "reduced",
         [](Book& b) {
             b.orders[0].extras.push_back({"hire", 1, {}, {}, named("reducd")});
         }},
        {"unknown-supplier", "the mill",
         [](Book& b) { b.ingredients[0].preferred_supplier = named("the mil"); }},
        {"unknown-tariff", "electricity of the deck",
         [](Book& b) { b.shop.ovens[0].fuel = named("electricity of deck"); }},
        {"unknown-ingredient", "butter", [](Book& b) { b.offers[0].item = named("buter"); }},
    };
    for (Case const& each : cases) {
        CAPTURE(each.help);
        Book book = sound_book();
        each.spoil(book);
        auto const found = said(book);
        REQUIRE(found.size() == 1);
        CHECK(found[0].code == each.code);
        CHECK(found[0].help == fmt::format("did you mean '{}'?", each.help));
    }
}

TEST_CASE(
    "a line that does not say how it is sold is the first way, and by the piece where there is none") {
    Book book = sound_book();
    book.orders[0].lines[0].sale_unit = {};
    link_well(book);
    CHECK(book.orders[0].lines[0].sale_unit.index == 0);
    book.formulas[0].sold_as.clear();
    link_well(book);
    CHECK_FALSE(book.orders[0].lines[0].sale_unit.is_resolved());
}

TEST_CASE("work that nobody does and an oven that burns nothing are told") {
    Book book = sound_book();
    book.formulas[0].labour[0].role = {};
    auto found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "missing-role");
    book = sound_book();
    book.shop.ovens[0].fuel = {};
    found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "missing-fuel");
}

TEST_CASE("four dozen of what is sold by the dozen is a question") {
    Book book = sound_book();
    OrderLine& line = book.orders[0].lines[0];
    line.count = 48;
    line.counted = "4 dozen";
    auto found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "which-count");
    CHECK(found[0].what ==
          "'4 dozen' may be 48 pieces, which are 4 of 'box of 12', or 48 of 'box of 12'");
    CHECK(found[0].help == "write 'count: 4' or 'count: 48'");
    book.formulas[0].sold_as[0].holds.amount = 5; // 48 / 5 = 9.6
    found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].what ==
          "'4 dozen' may be 48 pieces, which are 9.6 of 'box of 12', or 48 of 'box of 12'");
    CHECK(found[0].help == "write how many of 'box of 12' are meant, as 'count: 10'");
    // Of single pieces, or of jars, it is no question.
    book.formulas[0].sold_as[0].holds.amount = 1;
    link_well(book);
    book.formulas[0].sold_as[0].holds = quantity("250 g");
    link_well(book);
    book.formulas[0].sold_as.clear();
    book.orders[0].lines[0].sale_unit = {};
    link_well(book);
}

TEST_CASE("a drive that takes time needs somebody who drives, whatever is charged for it") {
    Book book = sound_book();
    book.orders[0].delivery = Delivery();
    book.orders[0].delivery->charge = DeliveryCharge::amount;
    book.orders[0].delivery->minutes = 20;
    CHECK(finding(link(book), "missing-driver"));
    book.shop.driver = named("baker");
    CHECK(!finding(link(book), "missing-driver"));
}

TEST_CASE("an order or a formula may say that no fee and no tax is meant") {
    Book book = sound_book();
    book.orders[0].paid_by = named("none");
    book.orders[0].tax = named("none");
    book.formulas[0].tax = named("none");
    book.shop.paid_by = named("none");
    link_well(book);
    CHECK(!book.orders[0].paid_by.is_resolved());
}

TEST_CASE("all that is wrong is told at once, not the first of it") {
    Book book = sound_book();
    book.formulas[0].lines[0].item = named("flower");
    book.formulas[0].labour[0].role = named("bakker");
    book.orders[0].lines[0].item = named("shel");
    CHECK(said(book).size() == 3);
}

TEST_CASE("a supply is not eaten and food is not used up: each is told where it belongs") {
    Book book = sound_book();
    book.formulas[0].lines[0].item = named("tray liner");
    book.formulas[0].consumables[0].supply = named("butter");
    auto const found = said(book);
    REQUIRE(found.size() == 2);
    CHECK(found[0].code == "supply-as-food");
    CHECK(says(found[0].help, "consumables"));
    CHECK(found[1].code == "food-as-supply");
    CHECK(says(found[1].help, "lines"));
}

TEST_CASE("food packed into a box is told as well") {
    Book book = sound_book();
    book.formulas[0].sold_as[0].packing[0].supply = named("butter");
    CHECK(finding(link(book), "food-as-supply"));
}

TEST_CASE("one name stands for one thing: ingredients, supplies and formulas share their names") {
    Book book = sound_book();
    formula(book, "butter", {{"plain flour", "1 g"}});
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "given-twice");
    CHECK(found[0].what == "'butter' is given twice");
    REQUIRE(found[0].notes.size() == 1);
    CHECK(found[0].notes[0].text == "first given here");
}

TEST_CASE("two orders of one number and two boxes of one name are told") {
    Book book = sound_book();
    order(book);
    wants(book.orders.back(), "shell", 1);
    sold_as(book.formulas[0], "box of 12", "12");
    auto const found = said(book);
    REQUIRE(found.size() == 2);
    CHECK(found[0].what == "'box of 12' is given twice");
    CHECK(found[1].what == "order 2026-041 is given twice");
}

TEST_CASE("the base of baker's percentages is a line of the formula") {
    Book book = sound_book();
    book.formulas[0].percentage_base.push_back(named("plain flower"));
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].what == "the base 'plain flower' is not a line of this formula");
    CHECK(found[0].help == "did you mean 'plain flour'?");
}

TEST_CASE("time that needs nobody needs no role") {
    Book book = sound_book();
    book.formulas[0].labour.push_back(rest("rest the dough", "60"));
    link_well(book);
}

TEST_CASE("work that somebody has to do needs to say who") {
    Book book = sound_book();
    book.formulas[0].labour.push_back(task("mix", "", "14"));
    CHECK(link(book).has_errors());
}

TEST_CASE("an oven needs to say what it burns") {
    Book book = sound_book();
    book.shop.ovens[0].fuel = named("");
    CHECK(link(book).has_errors());
}

namespace {

/// The sound book with a menu of its shells by the box.
Book with_menu() {
    Book book = sound_book();
    sold_as(book.formulas.front(), "single", "1");
    Menu menu;
    menu.name = "counter";
    menu.paid_by = {{named("card"), share_of<Share>("100 %")}};
    menu.categories = {{"sweet", {}, {}}};
    for (std::string_view const unit : {"box of 12", "single"}) {
        MenuItem item;
        item.item = named("shell");
        item.sale_unit = named(unit);
        item.category = named("sweet");
        item.tax = named("reduced");
        menu.items.push_back(std::move(item));
    }
    book.menus.push_back(std::move(menu));
    return book;
}

} // namespace

TEST_CASE("a menu's items, ways of selling, categories, taxes and fee are resolved") {
    Book book = with_menu();
    link_well(book);
    Menu const& menu = *book.find_menu("counter");
    CHECK(menu.items[1].item.index == index_of(book, "shell"));
    CHECK(menu.items[1].sale_unit.index == 1);
    CHECK(menu.items[1].category.index == 0);
    CHECK(menu.items[1].tax.index == 0);
    CHECK(book.shop.fees[menu.paid_by.front().how.index].name == "card");
    CHECK(book.find_menu("window") == nullptr);
}

TEST_CASE(
    "an item of a menu that does not say how it is sold is the first way, and may not stand twice") {
    Book book = with_menu();
    book.menus.front().items[0].sale_unit = {};
    link_well(book);
    CHECK(book.menus.front().items[0].sale_unit.index == 0);
    book.menus.front().items[1].sale_unit = named("box of 12");
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "given-twice");
    CHECK(found[0].what == "'shell' as 'box of 12' stands on this menu twice");
}

TEST_CASE("what a menu names and the books do not have is told with what may have been meant") {
    Book book = with_menu();
    Menu& menu = book.menus.front();
    menu.paid_by.front().how = named("crad");
    menu.items[0].item = named("shel");
    menu.items[0].tax = named("reducd");
    menu.items[1].sale_unit = named("singel");
    menu.items[1].category = named("sweat");
    std::vector<std::string> helps;
    for (Diagnostic const& each : said(book)) helps.push_back(each.help);
    std::sort(helps.begin(), helps.end());
    CHECK(helps == std::vector<std::string>{"did you mean 'card'?", "did you mean 'reduced'?",
                                            "did you mean 'shell'?", "did you mean 'single'?",
                                            "did you mean 'sweet'?"});
}

TEST_CASE("a by-product that is used needs a yield that cites what it is worth") {
    Book book = a_book();
    food(book, "lamb").uses_by_products = true;
    offer(book, "lamb", "12 lb", "79.80");
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].code == "by-products-untested");
    yield_test(book, "t", "lamb", "12 lb", "6 lb");
    book.offers.front().yield_source = by_test();
    CHECK(said(book).empty()); // the offer's own will do
}

TEST_CASE("cash has no fee unless the shop names one") {
    Book book = with_menu();
    book.menus.front().paid_by = {{named("card"), share_of<Share>("60 %")},
                                  {named("cash"), share_of<Share>("40 %")}};
    link_well(book);
    CHECK(book.menus.front().paid_by[0].how.is_resolved());
    CHECK(!book.menus.front().paid_by[1].how.is_resolved());
    fee(book, "cash", "0 %", "0.05"); // the bank counts it
    link_well(book);
    CHECK(book.menus.front().paid_by[1].how.is_resolved());
}

TEST_CASE("two menus of one name are one too many") {
    Book book = with_menu();
    book.menus.push_back(book.menus.front());
    auto const found = said(book);
    REQUIRE(found.size() == 1);
    CHECK(found[0].what == "menu 'counter' is given twice");
}
