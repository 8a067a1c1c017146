#include "random_book.hpp"

#include <groat/price/item_cost.hpp>
#include <groat/price/menu.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A plate whose food costs so much, and nothing else.
void plate(Book& book, std::string_view name, std::string_view cost) {
    std::string const what = std::string("all of ") + std::string(name);
    food(book, what, "1 kg", cost);
    formula(book, name, {{what, "1 kg"}}).makes = quantity("1");
}

Menu& menu(Book& book) {
    Menu entry;
    entry.name = "winter";
    book.menus.push_back(std::move(entry));
    return book.menus.back();
}

MenuItem& offers(Menu& menu, std::string_view item, std::string_view price = "",
                 std::string_view code = "USD") {
    MenuItem entry;
    entry.item = named(item);
    if (!price.empty()) entry.price = money(price, code);
    menu.items.push_back(std::move(entry));
    return menu.items.back();
}

/// A menu on which one plate of a cost stands alone.
Book one_plate(std::string_view cost, std::string_view price, PricePolicy target = {}) {
    Book book = a_book();
    plate(book, "plate", cost);
    offers(menu(book), "plate", price).target = std::move(target);
    return book;
}

struct Costed {
    explicit Costed(Book& book) {
        link_well(book);
        costing.emplace(linked(book), today);
        cost = cost_menu(*costing, book.menus.front(), found);
    }
    MenuCost const& operator*() const {
        REQUIRE_MESSAGE(cost.has_value(), in_words(found));
        return *cost;
    }
    MenuCost const* operator->() const { return &**this; }
    [[nodiscard]] MenuLine const& only() const { return (**this).lines.front(); }

    std::optional<Costing> costing;
    Diagnostics found;
    std::optional<MenuCost> cost;
};

std::string wanted(std::string_view cost, PricePolicy target, unsigned places = 2) {
    Book book = one_plate(cost, "", std::move(target));
    return printed(*Costed(book).only().target.wanted, places);
}

} // namespace

// Published prices, each as the only item of a menu -----------------------------------------------------------

TEST_CASE("food costs on a menu as textbooks have them") {
    // openwa.pressbooks.pub/bakeryandbusinessmath ch. 11: 173.89 for 200 portions at 25 % -> 0.86945, 3.4778
    CHECK(wanted("0.86945", at_food_cost("25 %"), 4) == "3.4778");
    CHECK(wanted("0.86945", at_food_cost("25 %")) == "3.48");
    // "FSM2025 Supplement" ch. 17: 36.00 / 24 = 1.50 at 35 % -> 4.29; its factor of 2.9 would give 4.35
    CHECK(wanted("1.50", at_food_cost("35 %")) == "4.29");
    // cookery textbook, "Food cost percentages": 1.60 at 40 % -> 4.00 (DERIVED)
    CHECK(wanted("1.60", at_food_cost("40 %")) == "4.00");
    // "Red Seal" practice item: 1.70 at 23 % -> 7.39
    CHECK(wanted("1.70", at_food_cost("23 %")) == "7.39");
    // Controlling Costs in Foodservice (Goodheart-Willcox 2014) p. 36: 4.00 at 45 % -> 8.89 (DERIVED)
    CHECK(wanted("4.00", at_food_cost("45 %")) == "8.89");
}

TEST_CASE("the food cost of a price as it is") {
    // openwa.pressbooks.pub/bakeryandbusinessmath, objective 8: 2.13 of 5.95 -> 35.798319 % (DERIVED)
    Book book = one_plate("2.13", "5.95");
    CHECK(printed(*Costed(book).only().earned.food_cost * 100, 6) == "35.798319");
    // cookery textbook: 35 % of 6.75 are 2.3625, printed 2.36
    Book other = one_plate("2.3625", "6.75");
    CHECK(Costed(other).only().earned.food_cost == percent("35 %"));
}

TEST_CASE("markups on a menu, forwards and backwards") {
    // OpenStax, Contemporary Mathematics, m00058, "Discounts, Markups, and Sales Tax". For 26.55 at 125 % the
    // steps printed are "1 + 2.25" and "3.25", which is wrong; its answer of 11.80 is 26.55 / 2.25
    struct Row {
        std::string_view cost, markup, price;
    };
    for (Row const& row :
         {Row{"62.00", "15 %", "71.30"}, Row{"750", "45 %", "1087.50"},
          Row{"8.85", "20 %", "10.62"}, Row{"11.80", "125 %", "26.55"}, Row{"1.30", "60 %", "2.08"},
          Row{"480", "75 %", "840"}, Row{"25.00", "18 %", "29.50"}}) {
        Book book = one_plate(row.cost, row.price, at_markup(row.markup));
        Costed const cost(book);
        CHECK(cost.only().target.wanted == money(row.price));
        CHECK(cost.only().gap == money("0"));
        CHECK(cost.only().earned.markup == percent(row.markup));
        CHECK(!cost.only().is_below_target());
    }
    // cost 5.20, price 9.90: 4.70, which is 90.38 % of the cost and 47.4747 % of the price
    Book book = one_plate("5.20", "9.90");
    Costed const cost(book);
    CHECK(cost.only().earned.profit == money("4.70"));
    CHECK(printed(*cost.only().earned.markup * 100, 2) == "90.38");
    CHECK(printed(*cost.only().earned.margin * 100, 4) == "47.4747");
}

TEST_CASE("a plate with three people's minutes on a menu") {
    // Controlling Costs in Foodservice p. 25-26: food 0.65; 10 min at 10.00, 3 at 3.50, 1 at 8.00; benefits 20 %;
    // supplies 0.06: prime cost 3.03 and variable cost, without benefits, 2.69 of rounded lines; unrounded 3.02 and 2.685
    Book book = a_book();
    food(book, "food", "1 kg", "0.65");
    supply(book, "napkin", "1", "0.06");
    for (auto const& [name, wage] :
         {std::pair("cook", "10.00"), std::pair("server", "3.50"), std::pair("dishwasher", "8.00")})
        role(book, name, wage, "20 %");
    Formula& plate = formula(book, "plate", {{"food", "1 kg"}});
    plate.makes = quantity("1");
    plate.labour = {task("cook", "cook", "10"), task("serve", "server", "3"),
                    task("wash", "dishwasher", "1")};
    plate.consumables.push_back(uses("napkin", "1", Per::piece));
    // Same book p. 26: a prime cost of 6.15 at 50 % is a price of 12.30; here 3.02 at 50 % is 6.04
    offers(menu(book), "plate", "6.04");
    Costed const cost(book);
    MenuLine const& line = cost.only();
    CHECK(line.target.burden.prime == money("3.02"));
    CHECK(line.earned.prime_cost == percent("50 %"));
    CHECK(line.unit_cost(Category::labour) == money("2.37"));
    CHECK(line.unit_cost(Category::consumables) == money("0.06"));
    CHECK(line.labour_minutes == 14);
    CHECK(line.oven_minutes.is_zero());
}

TEST_CASE("three products with their overhead, and all of them together") {
    // OpenStax, Managerial Accounting, m68135: 2,500,000 over 1,250,000 labour hours is 2.00 an hour; units
    // 140k, 100k, 250k; hours 350k, 400k, 500k; materials 3.50, 6.00, 11.70; labour 10, 2.75, 4.30; prices
    // 20, 25, 30 -> overhead 5, 8, 4; cost 18.50, 16.75, 20.00; profit 1.50, 8.25, 10.00
    struct Row {
        std::string_view name, material, hours, labour, price, overhead, cost, profit;
        int units;
    };
    Row const rows[] = {{"a", "3.50", "2.5", "10.00", "20", "5", "18.50", "1.50", 140'000},
                        {"b", "6.00", "4", "2.75", "25", "8", "16.75", "8.25", 100'000},
                        {"c", "11.70", "2", "4.30", "30", "4", "20.00", "10.00", 250'000}};
    Book book = a_book();
    overhead(book, "works", Overhead::Driver::labour_hour, "2.00");
    Menu& list = menu(book);
    for (Row const& row : rows) {
        plate(book, row.name, row.material);
        Role& hand = role(book, row.name, "0");
        hand.wage = {money(row.labour) / number(row.hours), find_unit("h", Measures::us)};
        Task work = task("work", row.name, "0");
        work.minutes = number(row.hours) * 60;
        book.formulas.back().labour.push_back(work);
        offers(list, row.name, row.price).sold = row.units;
    }
    list.fixed_costs = money("2500000");
    Costed const cost(book);
    Money profit;
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        MenuLine const& line = cost->lines[i];
        CHECK(line.unit_cost(Category::overhead) == money(rows[i].overhead));
        CHECK(line.target.burden.cost == money(rows[i].cost));
        CHECK(line.earned.profit == money(rows[i].profit));
        profit += money(rows[i].profit) * rows[i].units;
    }
    CHECK(cost->total.profit == profit);
    // the overhead that the books put on these sales is just what was spread
    CHECK(cost->break_even->overhead == money("2500000"));
    CHECK(cost->break_even->profit == profit);
    // contribution of an hour: (6.50 x 140k + 16.25 x 100k + 14.00 x 250k) / 1,250k = 4.828
    CHECK(cost->total.per_labour_hour() == money("4.828"));
    CHECK(cost->total.per_oven_hour() == std::nullopt);
}

TEST_CASE("a menu of three in the proportions of a mix breaks even where the mix does") {
    // OpenStax, Managerial Accounting, m68119; see break_even_test.cpp
    Book book = a_book();
    Menu& list = menu(book);
    plate(book, "a", "3.25");
    plate(book, "b", "4.50");
    plate(book, "c", "6.25");
    offers(list, "a", "6.25").sold = 50;
    offers(list, "b", "7.75").sold = 30;
    offers(list, "c", "9.25").sold = 20;
    list.fixed_costs = money("145000");
    Costed const cost(book);
    CHECK(cost->break_even->average.contribution == money("3.075"));
    BreakEven const even = cost->break_even->even.value();
    CHECK(even.units == number("5800000/123"));
    CHECK(printed(even.units * cost->mix->items[0].share, 0) == "23577");
    CHECK(printed(even.units * cost->mix->items[1].share, 0) == "14146");
    CHECK(printed(even.units * cost->mix->items[2].share, 0) == "9431");
}

// What a menu says and how it is read -------------------------------------------------------------------------

TEST_CASE("the nearest target counts: item, category, menu, sale unit, formula, shop") {
    Book book = a_book();
    book.shop.price = at_markup("10 %");
    for (std::string_view const name : {"a", "b", "c", "d", "e", "f"}) plate(book, name, "1.00");
    Menu& list = menu(book);
    list.categories = {{"sweet", at_markup("50 %"), {}}, {"plain", {}, {}}};
    offers(list, "a", "").target = at_markup("60 %");
    offers(list, "b", "").category = named("sweet");
    offers(list, "c", "").category = named("plain");
    offers(list, "d", "");
    book.formulas[3].price = at_markup("20 %");
    for (MenuItem& item : list.items) item.target.point = PricePoint{};
    book.menus.front().items[0].category = named("sweet");
    {
        Costed const cost(book);
        CHECK(cost->lines[0].price == coins("1.60"));
        CHECK(cost->lines[1].price == coins("1.50"));
        CHECK(cost->lines[2].price == coins("1.10"));
        CHECK(cost->lines[3].price == coins("1.20"));
    }
    // what the menu says goes before what the formula says
    book.menus.front().price = at_markup("40 %");
    Costed const cost(book);
    CHECK(cost->lines[1].price == coins("1.50"));
    CHECK(cost->lines[2].price == coins("1.40"));
    CHECK(cost->lines[3].price == coins("1.40"));
}

TEST_CASE("prices of a menu may be on the other side of tax than those of the shop") {
    // cost 1.00, markup 100 %: net 2.00, with 6 % 2.12, to the quarter 2.25
    Book book = one_plate("1.00", "2.12", at_markup("100 %"));
    book.shop.tax.rate = share_of<TaxRate>("6 %");
    Menu& list = book.menus.front();
    list.items.front().target.point = PricePoint{money("0.25"), {}, false};
    list.is_tax_contained = true;
    {
        Costed const cost(book);
        CHECK(cost->is_tax_contained);
        CHECK(cost.only().target.wanted == money("2.00"));
        CHECK(cost.only().target.price == coins("2.25"));
        CHECK(cost.only().net_price == money("2.00"));
        CHECK(cost.only().gap == money("-0.13"));
        CHECK(cost.only().is_below_target());
    }
    list.is_tax_contained.reset();
    Costed const without(book);
    CHECK(!without->is_tax_contained);
    CHECK(without.only().net_price == money("2.12"));
    CHECK(without.only().target.price == coins("2.00"));
    CHECK(without.only().gap == money("0.12"));
}

TEST_CASE("an item may be taxed at another rate than its formula") {
    Book book = one_plate("1.00", "2.20");
    book.shop.tax.rate = share_of<TaxRate>("6 %");
    book.shop.tax.other_rates = {{"reduced", share_of<TaxRate>("10 %")}};
    book.menus.front().is_tax_contained = true;
    book.menus.front().items.front().tax = named("reduced");
    CHECK(Costed(book).only().net_price == money("2.00"));
    book.menus.front().items.front().tax = named("none");
    CHECK(Costed(book).only().net_price == money("2.20"));
}

TEST_CASE("a fixed fee is shared by a standard run, or by what is paid together") {
    Book book = one_plate("1.00", "2.00");
    fee(book, "card", "0 %", "0.30");
    book.shop.paid_by = named("card");
    book.formulas.front().standard_run = 60;
    CHECK(Costed(book).only().earned.fee == money("0.005")); // 0.30 / 60, as for `groat cost`
    book.menus.front().items_per_payment = 2;
    CHECK(Costed(book).only().earned.fee == money("0.15"));
    book.menus.front().paid_by = {{named("none"), share_of<Share>("100 %")}};
    CHECK(Costed(book).only().earned.fee.is_zero());
}

TEST_CASE("paid in several ways, a fee weighs by the part that is paid so") {
    // 60 % at 3 % and 0.30, 30 % at 1 % and 0.10, 10 % without: 2.1 % and 0.21 of 2.00
    Book book = one_plate("1.00", "2.00");
    fee(book, "card", "3 %", "0.30");
    fee(book, "bank", "1 %", "0.10");
    Menu& menu = book.menus.front();
    menu.items_per_payment = 1;
    menu.paid_by = {{named("card"), share_of<Share>("60 %")},
                    {named("bank"), share_of<Share>("30 %")},
                    {named("cash"), share_of<Share>("10 %")}};
    Costed const mixed(book);
    CHECK(mixed.only().earned.fee == money("0.252"));
    CHECK(mixed->paid_by == "card 60 %, bank 30 %, cash 10 %");
    // a target is solved for with the same fee
    menu.items.front().target = at_margin("40 %");
    CHECK(Costed(book).only().target.wanted == money("1.21") / number("0.579"));
    menu.paid_by = {{named("cash"), share_of<Share>("100 %")}};
    CHECK(Costed(book).only().earned.fee.is_zero());
    CHECK(!Costed(book)->paid_by);
}

TEST_CASE("without a way of selling an item is costed as it is first sold") {
    Book book = one_plate("1.00", "9.00");
    sold_as(book.formulas.front(), "tray of 4", "4");
    sold_as(book.formulas.front(), "single", "1");
    CHECK(Costed(book).only().title == "plate, tray of 4");
    CHECK(Costed(book).only().target.burden.cost == money("4.00"));
    book.menus.front().items.front().sale_unit = named("single");
    CHECK(Costed(book).only().target.burden.cost == money("1.00"));
    book.menus.front().items.front().name = "plate of the day";
    CHECK(Costed(book).only().title == "plate of the day");
}

TEST_CASE("without a price now an item is judged at the one its target takes") {
    Book book = one_plate("1.00", "", at_margin("50 %"));
    Costed const cost(book);
    CHECK(!cost.only().is_price_now);
    CHECK(cost.only().price == coins("2.00"));
    CHECK(cost.only().earned.margin == percent("50 %"));
    CHECK(cost.only().gap == std::nullopt);
}

TEST_CASE("without a target a price is judged all the same") {
    Book book = one_plate("1.00", "4.00");
    Costed const cost(book);
    CHECK(cost.only().earned.margin == percent("75 %"));
    CHECK(cost.only().gap == std::nullopt);
    CHECK(cost.found.empty());
}

// What is wrong or odd ----------------------------------------------------------------------------------------

TEST_CASE("an item without price and target is refused") {
    Book book = one_plate("1.00", "");
    Costed const cost(book);
    CHECK(!cost.cost.has_value());
    CHECK(finding(cost.found, "no-price").has_value());
}

TEST_CASE("a target out of reach at any price is refused and says why") {
    Book book = one_plate("1.00", "4.00", at_margin("98 %"));
    fee(book, "card", "3 %", "0");
    book.shop.paid_by = named("card");
    Costed const cost(book);
    CHECK(!cost.cost.has_value());
    auto const found = finding(cost.found, "target-out-of-reach");
    REQUIRE(found.has_value());
    CHECK(says(found->what, "'plate': a margin of 98 % is out of reach"));
}

TEST_CASE("a price below cost is told with what is lost, and so is a target that leads there") {
    Book book = one_plate("4.00", "3.50");
    Costed const below(book);
    CHECK(below.only().loses());
    REQUIRE(finding(below.found, "below-cost").has_value());
    CHECK(says(finding(below.found, "below-cost")->what, "'plate' at 3.50 loses 0.50 each"));
    Book other = one_plate("4.00", "9.00", at_food_cost("100 %"));
    fee(other, "card", "0 %", "0.20");
    other.shop.paid_by = named("card");
    Costed const target(other);
    CHECK(!target.only().loses());
    REQUIRE(finding(target.found, "target-below-cost").has_value());
    CHECK(says(finding(target.found, "target-below-cost")->what, "at 4.00, which loses 0.20 each"));
}

TEST_CASE("a price of nothing has no margin and is a loss") {
    Book book = one_plate("4.00", "0.00");
    Costed const cost(book);
    CHECK(cost.only().loses());
    CHECK(cost.only().earned.margin == std::nullopt);
    CHECK(cost->total.margin() == std::nullopt);
    CHECK(cost->total.food_cost() == std::nullopt);
}

TEST_CASE("a category in which nothing stands is told") {
    Book book = one_plate("1.00", "2.00");
    book.menus.front().categories = {{"drinks", {}, {}}};
    CHECK(finding(Costed(book).found, "empty-category").has_value());
}

TEST_CASE("where nothing was sold there is no mix and no break-even, and the sums are nothing") {
    Book book = one_plate("1.00", "2.00");
    book.menus.front().items.front().sold = 0;
    book.menus.front().fixed_costs = money("100");
    Costed const cost(book);
    CHECK(finding(cost.found, "nothing-sold").has_value());
    CHECK(!cost->mix.has_value());
    CHECK(!cost->break_even.has_value());
    CHECK(cost->total.sales.is_zero());
    CHECK(cost->total.food_cost() == std::nullopt);
}

TEST_CASE("sales that leave nothing never break even") {
    Book book = one_plate("2.00", "2.00");
    book.menus.front().items.front().sold = 10;
    book.menus.front().fixed_costs = money("100");
    Costed const cost(book);
    REQUIRE(cost->break_even.has_value());
    CHECK(!cost->break_even->even.has_value());
    CHECK(cost->break_even->profit == money("-100"));
    CHECK(cost->break_even->tax.is_zero());
}

TEST_CASE("old prices are told once for each thing, whatever uses it") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    supply(book, "box", "1", "0.10");
    for (Offer& each : book.offers) each.from = day("2026-01-05");
    book.shop.stale_after = Days(60);
    formula(book, "dough", {{"flour", "1 kg"}});
    formula(book, "roll", {{"dough", "100 g"}}).makes = quantity("1");
    formula(book, "bun", {{"dough", "90 g"}}).makes = quantity("1");
    sold_as(book.formulas.back(), "box", "6").packing.push_back(uses("box", "1", Per::sale_unit));
    Menu& list = menu(book);
    offers(list, "roll", "1.00");
    offers(list, "bun", "1.00");
    Costed const cost(book);
    CHECK(cost.found.warnings() == 2);
    CHECK(says(in_words(cost.found), "the price of 'flour' is 324 days old"));
    CHECK(says(in_words(cost.found), "the price of 'box' is 324 days old"));
}

// Laws --------------------------------------------------------------------------------------------------------

namespace {

/// The book with a menu of all that its order takes, prices and sales by chance.
void add_menu(Book& book, Draw& draw) {
    Menu entry;
    entry.name = "all";
    Money const coin(book.shop.currency.minor_unit(), book.shop.currency);
    entry.fixed_costs = coin * Number(draw.whole(1, 500'000));
    std::vector<std::pair<std::string, std::string>> seen;
    for (OrderLine const& line : book.orders.front().lines) {
        std::pair const key(line.item.name, line.sale_unit.name);
        if (std::find(seen.begin(), seen.end(), key) != seen.end()) continue;
        if (line.sale_unit.name.empty() && !book.formulas[line.item.index].sold_as.empty())
            continue; // would be the first of its ways
        seen.push_back(key);
        MenuItem item;
        item.item = named(line.item.name);
        item.sale_unit = named(line.sale_unit.name);
        item.price = coin * Number(draw.whole(0, 4000));
        item.sold = Integer(draw.whole(0, 300));
        entry.items.push_back(std::move(item));
    }
    book.menus.push_back(std::move(entry));
}

template <class Law> void for_random_menus(std::uint64_t count, Law law) {
    std::size_t reached = 0;
    Wanted wanted;
    wanted.fixed_prices = false;
    for (std::uint64_t seed = 1; seed <= count; ++seed) {
        CAPTURE(seed);
        Book book = random_book(seed, wanted);
        Draw draw(seed);
        add_menu(book, draw);
        if (book.menus.front().items.empty()) continue;
        link_well(book);
        Costing const costing(linked(book), today);
        Diagnostics found;
        auto const cost = cost_menu(costing, book.menus.front(), found);
        REQUIRE_MESSAGE(cost.has_value(), in_words(found));
        law(book, costing, *cost);
        ++reached;
    }
    CHECK(reached > count / 2);
}

} // namespace

TEST_CASE("a menu costs each item as `groat cost` does, to the last digit") {
    for_random_menus(60, [](Book const& book, Costing const& costing, MenuCost const& cost) {
        for (MenuLine const& line : cost.lines) {
            SaleUnit const* const unit =
                line.item->sale_unit.is_resolved()
                    ? &book.formulas[line.target.formula].sold_as[line.item->sale_unit.index]
                    : nullptr;
            Diagnostics found;
            auto const alone = cost_item(costing, line.target.formula, unit, found);
            REQUIRE(alone.has_value());
            for (std::size_t i = 0; i < category_count; ++i)
                CHECK(line.target.cost.amounts[i] == alone->line.cost.amounts[i]);
            CHECK(line.target.wanted == alone->line.wanted);
            CHECK(line.target.price == alone->line.price);
            CHECK(line.target.burden.fee.fixed == alone->line.burden.fee.fixed);
        }
    });
}

TEST_CASE("set to the price its target takes, each item reaches the target exactly") {
    for_random_menus(60, [](Book const&, Costing const&, MenuCost const& cost) {
        for (MenuLine const& line : cost.lines) {
            Earned const at = earned(*line.target.wanted, line.target.burden);
            std::visit(
                [&](auto const& target) {
                    using Kind = std::decay_t<decltype(target)>;
                    if constexpr (std::is_same_v<Kind, Margin>)
                        CHECK(at.margin == target.value());
                    else if constexpr (std::is_same_v<Kind, Markup>)
                        CHECK(at.markup == target.value());
                    else if constexpr (std::is_same_v<Kind, FoodCostShare>)
                        CHECK(at.food_cost == target.value());
                    else if constexpr (std::is_same_v<Kind, PrimeCostShare>)
                        CHECK(at.prime_cost == target.value());
                    else if constexpr (std::is_same_v<Kind, Contribution>)
                        CHECK(at.contribution == target.amount);
                    else
                        FAIL("no target was asked for");
                },
                line.target.target);
        }
    });
}

TEST_CASE("whatever is weighted is the sum over the items") {
    for_random_menus(60, [](Book const& book, Costing const&, MenuCost const& cost) {
        Money sales;
        Money ingredients;
        Money prime;
        Money contribution;
        Money profit;
        Money fee;
        Number units;
        for (MenuLine const& line : cost.lines) {
            Number const sold = Number(*line.item->sold);
            units += sold;
            sales += line.net_price * sold;
            ingredients += line.target.burden.ingredients * sold;
            prime += line.target.burden.prime * sold;
            contribution += line.earned.contribution * sold;
            profit += line.earned.profit * sold;
            fee += line.earned.fee * sold;
        }
        CHECK(cost.total.sales == sales);
        CHECK(cost.total.contribution == contribution);
        CHECK(cost.total.profit == profit);
        CHECK(cost.total.sales - cost.total.cost.total() - fee == profit);
        CHECK(cost.total.sales - cost.total.cost.variable(book.shop) - fee == contribution);
        if (!sales.is_zero()) {
            CHECK(cost.total.food_cost() == ingredients / sales);
            CHECK(cost.total.prime_cost() == prime / sales);
            CHECK(cost.total.margin() == profit / sales);
        }
        if (units.is_zero()) return;
        CHECK(cost.mix->contribution_line * units == contribution);
        if (cost.break_even->even) {
            // at the sales to break even, in the same mix, just the fixed costs are earned
            BreakEven const& even = *cost.break_even->even;
            CHECK(contribution * (even.units / units) == cost.break_even->fixed_costs);
            CHECK(sales * (even.units / units) == even.sales);
        }
    });
}

TEST_CASE("what was found before still stands in the way of a menu, and of each of its items") {
    Book book = a_book();
    food(book, "saffron");
    formula(book, "risotto", {{"saffron", "1 g"}}).makes = quantity("1");
    formula(book, "cake", {{"saffron", "2 g"}}).makes = quantity("1");
    offers(menu(book), "risotto", "6.00");
    offers(book.menus.front(), "cake", "4.00");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found = costing.findings();
    CHECK_FALSE(cost_menu(costing, book.menus.front(), found).has_value());
    CHECK(found.errors() == 1); // of both the same is to be said
}
