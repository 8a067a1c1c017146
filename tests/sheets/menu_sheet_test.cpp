#include "random_book.hpp"
#include "sheets.hpp"

#include <groat/base/text.hpp>
#include <groat/paper/csv.hpp>
#include <groat/paper/html.hpp>
#include <groat/paper/json.hpp>
#include <groat/paper/markdown.hpp>
#include <groat/paper/scatter.hpp>
#include <groat/paper/text.hpp>
#include <groat/sheets/menu_sheet.hpp>

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

MenuItem item(std::string_view name, std::string_view price, int sold,
              std::string_view category = "") {
    MenuItem entry;
    entry.item = named(name);
    entry.price = money(price);
    entry.sold = sold;
    entry.category = named(category);
    return entry;
}

/// Four plates that cost their food and nothing else, one in each group.
Book four_plates() {
    Book book = a_book();
    book.shop.price = at_food_cost("50 %");
    book.shop.standard_run = 10;
    for (auto const& [name, cost] : {std::pair("tart", "1.00"), std::pair("roll", "2.00"),
                                     std::pair("soup", "3.00"), std::pair("cake", "4.00")}) {
        food(book, std::string("all of ") + name, "1 kg", cost);
        formula(book, name, {{std::string("all of ") + name, "1 kg"}}).makes = quantity("1");
    }
    Menu menu;
    menu.name = "counter";
    menu.categories = {{"sweet", {}, {}}, {"drinks", {}, {}}, {"lunch", {}, {}}};
    menu.items = {item("tart", "6.00", 40, "sweet"), item("roll", "4.00", 41, "lunch"),
                  item("soup", "9.00", 10, "lunch"), item("cake", "3.50", 10, "sweet")};
    book.menus.push_back(std::move(menu));
    return book;
}

Sheet sheet_of(Book& book, MixOver over = MixOver::categories) {
    link_well(book);
    Costing const costing(linked(book), today);
    auto const cost = calculated(
        [&](Diagnostics& found) { return cost_menu(costing, book.menus.front(), found); });
    return menu_sheet(cost, costing, over);
}

} // namespace

TEST_CASE("prices stand beside those wanted, and what loses money is marked") {
    Book book = four_plates();
    Sheet const sheet = sheet_of(book);
    Table const& prices = table(sheet, "prices");
    CHECK(shown(prices, "1", "item") == "1. Tart");
    CHECK(shown(prices, "1", "category") == "sweet");
    CHECK(shown(prices, "1", "price") == "6.00");
    CHECK(shown(prices, "1", "wanted") == "2.00");
    CHECK(shown(prices, "1", "gap") == "4.00");
    CHECK(shown(prices, "1", "mark").empty());
    CHECK(shown(prices, "2", "gap") == "0.00");
    CHECK(shown(prices, "2", "mark").empty());
    CHECK(shown(prices, "4", "wanted") == "8.00");
    CHECK(shown(prices, "4", "gap") == "-4.50");
    CHECK(shown(prices, "4", "mark") == "LOSES 0.50, before overhead too");
    // 9.00 is above 6.00; at 5.50 soup would be below its target
    book.menus.front().items[2].price = money("5.50");
    CHECK(shown(table(sheet_of(book), "prices"), "3", "mark") == "below target");
}

TEST_CASE("a loss that overhead makes is told from one that every sale makes") {
    // cake costs 4.00 and 0.60 of overhead a piece: 4.30 loses 0.30, and leaves 0.30 over its food
    Book book = four_plates();
    overhead(book, "rent", Overhead::Driver::piece, "0.60");
    book.menus.front().items[3].price = money("4.30");
    CHECK(shown(table(sheet_of(book), "prices"), "4", "mark") == "LOSES 0.30");
}

TEST_CASE("sums by category are those of what was sold, and the mix is weighed by it") {
    Book book = four_plates();
    Sheet const sheet = sheet_of(book);
    Table const& totals = table(sheet, "totals");
    // sweet: 40 x 6.00 + 10 x 3.50 = 275.00, of it food 80.00; lunch: 164.00 + 90.00, food 82.00 + 30.00
    CHECK(shown(totals, "sweet", "units") == "50");
    CHECK(shown(totals, "sweet", "sales") == "275.00");
    CHECK(shown(totals, "sweet", "food_cost") == "29.1");
    CHECK(shown(totals, "lunch", "sales") == "254.00");
    CHECK(shown(totals, "total", "sales") == "529.00");
    CHECK(shown(totals, "total", "profit") == "337.00");
    CHECK(shown(totals, "total", "food_cost") == "36.3"); // 192 / 529
    CHECK(find_row(totals, "drinks") == nullptr);
    CHECK(shown(sheet, "menu", "food_cost") == "36.3");
    CHECK(shown(sheet, "menu", "contribution") == "3.34"); // 337 / 101
}

TEST_CASE("over the whole menu each item is judged against all others") {
    Book book = four_plates();
    Sheet const sheet = sheet_of(book, MixOver::menu);
    Table const& mix = table(sheet, "mix");
    CHECK(mix.rows.size() == 4);
    CHECK(shown(mix, "1", "group") == "sells and earns");
    CHECK(shown(mix, "2", "group") == "sells, earns little");
    CHECK(shown(mix, "3", "group") == "earns, sells little");
    CHECK(shown(mix, "4", "group") == "neither");
    CHECK(shown(sheet, "lines", "popularity_line") == "17.50");
    Remarks const& advice = *section<Remarks>(sheet, "advice");
    REQUIRE(advice.lines.size() == 4);
    CHECK(says(advice.lines[3], "Neither (4): take it off"));
    // the note names the groups as the textbook does
    CHECK(says(section<Remarks>(sheet, "sorting")->lines[0],
               "stars (sells and earns), plowhorses (sells, earns little), puzzles (earns, sells "
               "little), dogs (neither)"));
}

TEST_CASE("a category of fewer than four items is listed and not placed") {
    Book book = four_plates();
    Sheet const sheet = sheet_of(book);
    Table const& mix = table(sheet, "mix");
    // sweet: 40 of 50, 10 of 50
    CHECK(shown(mix, "1", "share") == "80.0");
    CHECK(shown(mix, "4", "share") == "20.0");
    CHECK(mix.rows[1].key == "4"); // category by category
    // 40 x 5.00 - 10 x 0.50 = 195.00
    CHECK(mix.rows[2].kind == Row::Kind::subtotal);
    CHECK(shown(mix, "sweet", "sold") == "50");
    CHECK(shown(mix, "sweet", "contribution") == "3.90");
    for (Row const& row : mix.rows)
        if (row.kind == Row::Kind::line) CHECK(shown(mix, row.key, "group").empty());
    CHECK(says(table(sheet, "mix_lines").remark, "sweet (2), lunch (2)"));
    CHECK(table(sheet, "mix_lines").rows.empty());
    CHECK(section<Chart>(sheet, "plane") == nullptr);
    CHECK(section<Remarks>(sheet, "advice") == nullptr);
}

TEST_CASE("each category has its own lines, plane and groups") {
    Book book = four_plates();
    // lunch gets the same four again, of which the first sells less; sweet keeps two
    book.menus.front().items.push_back(item("tart", "5.00", 9, "lunch"));
    book.menus.front().items.push_back(item("cake", "9.00", 30, "lunch"));
    book.menus.front().items[4].sale_unit = named("half");
    book.menus.front().items[5].sale_unit = named("half");
    sold_as(book.formulas[0], "half", "1 each");
    sold_as(book.formulas[3], "half", "1 each");
    sold_as(book.formulas[0], "whole", "1 each");
    sold_as(book.formulas[3], "whole", "1 each");
    book.menus.front().items[0].sale_unit = named("whole");
    book.menus.front().items[3].sale_unit = named("whole");
    Sheet const sheet = sheet_of(book);
    // lunch: 41 at 2.00, 10 at 6.00, 9 at 4.00, 30 at 5.00: 328 / 90 = 3.6444 each, 17.5 % of 90 = 15.75
    Table const& lines = table(sheet, "mix_lines");
    REQUIRE(lines.rows.size() == 1);
    CHECK(shown(lines, "lunch", "sold") == "90");
    CHECK(shown(lines, "lunch", "popularity_line") == "17.50");
    CHECK(shown(lines, "lunch", "contribution_line") == "3.6444");
    Table const& mix = table(sheet, "mix");
    CHECK(shown(mix, "1", "group").empty());
    CHECK(shown(mix, "2", "group") == "sells, earns little");
    CHECK(shown(mix, "3", "group") == "earns, sells little");
    CHECK(shown(mix, "5", "group") == "earns, sells little");
    CHECK(shown(mix, "6", "group") == "sells and earns");
    CHECK(section<Chart>(sheet, "plane", "lunch") != nullptr);
    CHECK(says(section<Remarks>(sheet, "advice")->lines[2], "(3, 5)"));
}

TEST_CASE("a wanted price that its rounding leaves below target is marked") {
    // a margin of 40 % on 3.05 of food takes 5.0833; to the nearest 0.25 that is 5.00, which keeps 39 %
    Book book = four_plates();
    book.shop.price = at_margin("40 %");
    book.shop.price.point = PricePoint{money("0.25"), {}, true};
    book.offers.front().price = money("3.05");
    book.menus.front().items[0].price = money("5.00");
    CHECK(shown(table(sheet_of(book), "prices"), "1", "gap") == "0.00");
    CHECK(shown(table(sheet_of(book), "prices"), "1", "mark") == "wanted is rounded below target");
    book.menus.front().items[0].price = money("4.75");
    CHECK(shown(table(sheet_of(book), "prices"), "1", "mark") ==
          "below target; wanted is rounded below target");
    book.shop.price.point->to_nearest = false;
    CHECK(shown(table(sheet_of(book), "prices"), "1", "mark") == "below target");
}

TEST_CASE("break-even in units of each, whole and adding up") {
    Book book = four_plates();
    book.menus.front().fixed_costs = money("100.00");
    book.menus.front().wanted_profit = money("50.00");
    book.menus.front().tax_on_profit = share_of<Share>("20 %");
    Sheet const sheet = sheet_of(book);
    // 100 / (337 / 101) = 29.97, so 30; (100 + 62.50) x 101 / 337 = 48.70, so 49
    CHECK(shown(sheet, "break_even", "even_units") == "30");
    CHECK(shown(sheet, "break_even", "wanted_before_tax") == "62.50");
    CHECK(shown(sheet, "break_even", "wanted_units") == "49");
    CHECK(shown(sheet, "break_even", "profit_after_tax") == "189.60"); // 237 x 0.8
    Table const& items = table(sheet, "break_even_items");
    CHECK(shown(items, "total", "even") == "30");
    CHECK(shown(items, "1", "even") == "12"); // 30 x 40 / 101 = 11.88
    CHECK(shown(items, "2", "even") == "12"); // 12.18
    CHECK(shown(items, "3", "even") == "3");
    CHECK(shown(items, "4", "even") == "3");
}

TEST_CASE("where nothing is left for fixed costs the sheet says so, and has no table of units") {
    Book book = four_plates();
    book.menus.front().items = {item("cake", "4.00", 10, "sweet")};
    book.menus.front().fixed_costs = money("100.00");
    Sheet const sheet = sheet_of(book);
    CHECK(says(section<Remarks>(sheet, "break_even_remarks")->lines[0],
               "A sale leaves nothing over its variable cost"));
    CHECK(section<Table>(sheet, "break_even_items") == nullptr);
}

TEST_CASE("without sales a menu is summed over one of each, and has no mix") {
    Book book = four_plates();
    for (MenuItem& each : book.menus.front().items) each.sold.reset();
    Sheet const sheet = sheet_of(book);
    CHECK(table(sheet, "totals").title == "One of each, by category");
    CHECK(shown(table(sheet, "totals"), "total", "sales") == "22.50");
    CHECK(section<Table>(sheet, "mix") == nullptr);
    CHECK(section<Chart>(sheet, "plane") == nullptr);
}

TEST_CASE("items without a standard run are named") {
    Book book = four_plates();
    CHECK(section<Remarks>(sheet_of(book), "run_remark") == nullptr);
    book.shop.standard_run.reset();
    book.formulas[1].standard_run = 20;
    CHECK(says(section<Remarks>(sheet_of(book), "run_remark")->lines[0], "stated for 1, 3, 4:"));
}

TEST_CASE("more items than numbers fit are dots") {
    Book book = four_plates();
    for (int i = 0; i < 100; ++i) {
        std::string const name = fmt::format("plate {}", i);
        Formula copy = book.formulas[0];
        copy.name = name;
        book.formulas.push_back(std::move(copy));
        book.menus.front().items.push_back(item(name, "5.00", i, "lunch"));
    }
    Chart const plane = *section<Chart>(sheet_of(book, MixOver::menu), "plane");
    CHECK(plane.is_lettered);
    std::string const drawn = fmt::format("{}", fmt::join(lettered(plane), "\n"));
    CHECK(says(drawn, "•"));
    CHECK(!says(drawn, "At the place"));
}

TEST_CASE("the sheet is drawn within a page, and its plane keeps its blanks") {
    Book book = four_plates();
    book.menus.front().fixed_costs = money("100.00");
    Sheet const sheet = sheet_of(book, MixOver::menu);
    std::string const text = to_text(sheet);
    for (std::size_t at = 0; at < text.size();) {
        std::size_t const end = text.find('\n', at);
        CHECK(display_width(text.substr(at, end - at)) <= 80);
        at = end + 1;
    }
    auto const lines = lettered(*section<Chart>(sheet, "plane"));
    CHECK(says(text, lines[0]));
    CHECK(says(to_markdown(sheet), "\n    " + lines[1]));
    CHECK(!says(to_json(sheet), "plane")); // its figures stand in the mix
    CHECK(!says(to_csv(sheet), "Contribution each (up)"));
    CHECK(says(to_html(sheet), "<svg class=\"chart\""));
    CHECK(!says(to_csv(sheet), "┼"));
}

TEST_CASE("all that is printed of a menu adds up, by category and item") {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        Book book = random_book(seed, {});
        Draw draw(seed);
        Menu menu;
        menu.name = "all";
        menu.categories = {{"a", {}, {}}, {"b", {}, {}}, {"c", {}, {}}};
        Currency const currency = book.shop.currency;
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            MenuItem entry;
            entry.item = named(book.formulas[i].name);
            entry.price = Money(currency.minor_unit() * Number(draw.whole(100, 3000)), currency);
            entry.sold = Integer(draw.whole(0, 90));
            entry.category = named(draw.one_of<std::string>({"a", "b", "c"}));
            menu.items.push_back(std::move(entry));
        }
        menu.items.front().sold = 1;
        menu.fixed_costs = Money(currency.minor_unit() * 100, currency);
        book.menus.push_back(std::move(menu));
        Sheet const sheet = sheet_of(book);
        CHECK(what_does_not_add_up(sheet, currency.code()) == "");
        CHECK(what_does_not_add_up(sheet, "each") == "");
        Table const& costs = table(sheet, "costs");
        for (Row const& row : costs.rows) {
            Number sum;
            for (std::size_t i = 1; i + 1 < row.cells.size(); ++i)
                sum += number(shown(row.cells[i]));
            CHECK(sum == number(shown(row.cells.back())));
        }
    }
}
