#include "books.hpp"
#include "random_book.hpp"

#include <groat/cost/delivery_cost.hpp>
#include <groat/cost/engine.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <functional>

using namespace groat;
using namespace groat::test;

namespace {

/// A cost and its costing.
struct Costed {
    Costing costing;
    OrderCost cost;
};
Costed costed(Book const& book, std::vector<Sale> sales, Wholes wholes = Wholes::all,
              std::optional<Delivery> delivery = {}) {
    Costing costing(linked(book), today);
    OrderCost cost = costing.cost({std::move(sales), wholes, std::move(delivery)});
    return {std::move(costing), std::move(cost)};
}

/// A cookie of one ingredient that costs 1.00 a kilogram, 100 g each, ten to the batch.
Book cookie_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "baker", "18.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("10");
    return book;
}

Costed cookies(Book& book, int count, Wholes wholes = Wholes::all) {
    link_well(book);
    return costed(book, {sale(book, "cookie", count)}, wholes);
}

} // namespace

// Ingredients -------------------------------------------------------------------------------------------

TEST_CASE("ingredients cost what goes in at what they cost to buy") {
    // flour 620 g of 25 lb at 13.80, butter 340.194 g (1 1/2 cup of 226.796 g) at 4.20 a lb
    Book book = a_book();
    food(book, "flour", "25 lb", "13.80");
    food(book, "butter", "1 lb", "4.20").densities.push_back(density("1/2 lb / cup"));
    formula(book, "shell", {{"flour", "620 g"}, {"butter", "1 1/2 cup"}}).makes = quantity("40");
    link_well(book);
    Costed const batch = costed(book, {sale(book, "shell", 40)});
    // 620 x 13.80 / 11339.80925 = 0.754510...; 3/4 lb x 4.20 = 3.15
    Money const flour = money("13.80") * (620 / number("11339.80925"));
    CHECK(batch.cost.total[Category::ingredients] == flour + money("3.15"));
    CHECK(printed(flour, 4) == "0.7545");
    CHECK(of_ingredient(batch.cost, book, "butter").cost == money("3.15"));
    CHECK(of_ingredient(batch.cost, book, "butter").packs == 1);
    CHECK(of_ingredient(batch.cost, book, "butter").outlay == money("4.20"));
}

TEST_CASE("what is cut away, baked off and rounded up is told apart and adds up") {
    // Two plums of 100 g as bought at 80 %, 4.00 a kg; the bowl keeps a tenth; one piece from a whole batch
    // of 160 g / 80 g. In the piece: without losses a batch is 160 g, 2 pieces; one takes 100 g bought, 80 g
    // usable. Then the bowl: 144 g make 1.8 pieces, one takes 200 / 1.8 g. Then the whole batch: 200 g.
    Book book = a_book();
    Ingredient& plum = food(book, "plum", "1 kg", "4.00");
    plum.grams_each = 100;
    plum.yield = share_of<Yield>("80 %");
    Formula& tart = formula(book, "tart", {{"plum", "2 as bought"}});
    tart.portion = quantity("80 g");
    tart.batch_step = 1;
    lose(tart, "bowl", "10 %", LossStage::before_portioning);
    link_well(book);
    YieldLoss const loss = costed(book, {sale(book, "tart", 1)}).cost.loss;
    CHECK(loss.in_the_piece == money("0.32"));
    CHECK(loss.trim == money("0.08"));
    CHECK(loss.process == money("4/9") - money("0.40"));
    CHECK(loss.rounding == money("0.80") - money("4/9"));
    CHECK(loss.total() == money("0.80"));
}

TEST_CASE("a yield loss shown is what the trade calls AP against EP: carrots at 80 %") {
    // BC Cook Articulation Committee, Basic Kitchen and Food Service Management: 1 kg leaves 800 g
    Book book = a_book();
    food(book, "carrot", "1 kg", "1.50").yield = share_of<Yield>("80 %");
    formula(book, "salad", {{"carrot", "1 kg as bought"}}).makes = quantity("8");
    link_well(book);
    YieldLoss const loss = costed(book, {sale(book, "salad", 8)}).cost.loss;
    CHECK(loss.in_the_piece == money("1.20"));
    CHECK(loss.trim == money("0.30"));
    CHECK(loss.process.is_zero());
    CHECK(loss.rounding.is_zero());
}

TEST_CASE("leftover is charged to the order, or kept, and then all of its cost goes with it") {
    // 15 of a whole batch of 10: two batches, 2 kg, 2.00; half a batch is left over
    Book book = cookie_book();
    book.formulas[0].batch_step = 1;
    book.formulas[0].labour.push_back(task("mix", "baker", "10"));
    Costed const charged = cookies(book, 15);
    CHECK(charged.cost.total[Category::ingredients] == money("2.00"));
    CHECK(charged.cost.loss.rounding == money("0.50"));
    // the hands of both batches: 2 x 10 min at 18.00
    CHECK(charged.cost.total[Category::labour] == money("6.00"));

    // kept, it pays for the 15 it takes, of a run of one batch: 1.00 and 10 min for 10
    book.formulas[0].keeps_leftover = true;
    Costed const kept = cookies(book, 15);
    CHECK(kept.cost.total[Category::ingredients] == money("1.50"));
    CHECK(kept.cost.loss.rounding.is_zero());
    CHECK(kept.cost.total[Category::labour] == money("4.50"));
}

TEST_CASE(
    "the deposit on a bottle is paid, but charged to no order, even where whole bottles are") {
    Book book = a_book();
    food(book, "colour", "100 g", "6.00").buys_whole_packs = true;
    book.offers[0].deposit = money("0.25");
    formula(book, "red", {{"colour", "4 g"}}).makes = quantity("1");
    link_well(book);
    Costed const order = costed(book, {sale(book, "red", 30)}); // 120 g: two bottles
    IngredientUse const& colour = of_ingredient(order.cost, book, "colour");
    CHECK(colour.cost == money("12.00"));
    CHECK(colour.outlay == money("12.50"));
}

TEST_CASE("a bottle of colour bought for one order is charged by the bottle, to those who use it") {
    // 4 g of red, 8 g of blue cookie's 12 g of a 100 g bottle at 6.00
    Book book = a_book();
    food(book, "colour", "100 g", "6.00").buys_whole_packs = true;
    food(book, "flour", "1 kg", "1.00");
    formula(book, "red", {{"colour", "4 g"}, {"flour", "96 g"}}).makes = quantity("1");
    formula(book, "blue", {{"colour", "8 g"}, {"flour", "92 g"}}).makes = quantity("1");
    link_well(book);
    Costed const order = costed(book, {sale(book, "red", 1), sale(book, "blue", 1)});
    CHECK(of_ingredient(order.cost, book, "colour").cost == money("6.00"));
    CHECK(order.cost.lines[0].cost[Category::ingredients] == money("2.00") + money("0.096"));
    CHECK(order.cost.lines[1].cost[Category::ingredients] == money("4.00") + money("0.092"));
    // 12 g at 0.06 is eaten, 5.28 is the rest of the bottle
    CHECK(order.cost.loss.rounding == money("5.28"));
    // a menu counts as if the rest were used
    Costed const menu = costed(book, {sale(book, "red", 1), sale(book, "blue", 1)}, Wholes::none);
    CHECK(of_ingredient(menu.cost, book, "colour").cost == money("0.72"));
}

TEST_CASE("two bottles are charged when one does not reach") {
    Book book = a_book();
    food(book, "colour", "100 g", "6.00").buys_whole_packs = true;
    formula(book, "red", {{"colour", "4 g"}}).makes = quantity("1");
    link_well(book);
    CHECK(costed(book, {sale(book, "red", 25)}).cost.total.total() == money("6.00"));
    CHECK(costed(book, {sale(book, "red", 26)}).cost.total.total() == money("12.00"));
}

TEST_CASE("costs run up in the share of a filling's demand that each cookie took") {
    // filling 10.00 a kg in whole batches of 1 kg; 300 g and 200 g of one batch: 6.00 and 4.00
    Book book = a_book();
    food(book, "plum", "1 kg", "10.00");
    formula(book, "filling", {{"plum", "1 kg"}}).batch_step = 1;
    formula(book, "a", {{"filling", "30 g"}}).makes = quantity("1");
    formula(book, "b", {{"filling", "10 g"}}).makes = quantity("1");
    link_well(book);
    Costed const order = costed(book, {sale(book, "a", 10), sale(book, "b", 20)});
    CHECK(order.cost.lines[0].cost.total() == money("6.00"));
    CHECK(order.cost.lines[1].cost.total() == money("4.00"));
    CHECK(of_formula(order.cost, book, "filling").ingredients == money("10.00"));
}

// Supplies ------------------------------------------------------------------------------------------------

TEST_CASE("boxes and liners are counted whole where they are used") {
    Book book = cookie_book();
    supply(book, "box", "10", "5.00");
    supply(book, "liner", "100", "4.00");
    oven(book, "deck", "1 kW", "100 %", "0", "0.00");
    Formula& cookie = book.formulas[0];
    cookie.oven = baked_in("deck", "10", "8");
    cookie.consumables.push_back(uses("liner", "3/2", Per::load));
    sold_as(cookie, "half dozen", "6").packing.push_back(uses("box", "1", Per::sale_unit));
    link_well(book);
    Costed const order = costed(book, {sale(book, "cookie", 3, "half dozen")});
    // 18 cookies in loads of 8: 3 loads, 4.5 liners, so 5 at 0.04; 3 boxes at 0.50
    CHECK(order.cost.total[Category::consumables] == money("0.20"));
    CHECK(order.cost.total[Category::packaging] == money("1.50"));
    CHECK(of_ingredient(order.cost, book, "liner").bought == 5);
    CHECK(of_ingredient(order.cost, book, "liner").usable.is_zero());
    // 18 / 8 x 1.5 = 3.375 in a long run
    Costed const menu = costed(book, {sale(book, "cookie", 3, "half dozen")}, Wholes::none);
    CHECK(of_ingredient(menu.cost, book, "liner").bought == number("3.375"));
}

TEST_CASE("boxes by the pack are shared by cookies and packing alike") {
    Book book = cookie_book();
    supply(book, "bag", "10", "5.00").buys_whole_packs = true;
    Formula& cookie = book.formulas[0];
    cookie.consumables.push_back(uses("bag", "1", Per::order));
    sold_as(cookie, "bag of 10", "10").packing.push_back(uses("bag", "1", Per::sale_unit));
    link_well(book);
    Costed const order = costed(book, {sale(book, "cookie", 4, "bag of 10")});
    // five bags of a pack of ten: 5.00 in all, one of five for the piping, four of five for the cookies
    CHECK(order.cost.total[Category::consumables] == money("1.00"));
    CHECK(order.cost.total[Category::packaging] == money("4.00"));
}

TEST_CASE("a piece sold without a box pays for none") {
    Book book = cookie_book();
    supply(book, "box", "10", "5.00");
    sold_as(book.formulas[0], "half dozen", "6")
        .packing.push_back(uses("box", "1", Per::sale_unit));
    CHECK(cookies(book, 6).cost.total[Category::packaging].is_zero());
}

// Labour --------------------------------------------------------------------------------------------------

TEST_CASE("three people's minutes for one plate") {
    // Controlling Costs in Foodservice (Goodheart-Willcox 2014) p. 25-26: food 0.65; cook 10 min at 10.00,
    // server 3 min at 3.50, dishwasher 1 min at 8.00; benefits 20 %; supplies 0.06. Printed, each line
    // rounded: 1.67 + 0.18 + 0.13 = 1.98, benefits 0.40, prime cost 3.03, variable 2.69. Unrounded labour is
    // 1.975, and 0.175 -> 0.18 needs exact decimals: a binary 0.175 lies below and rounds to 0.17
    Book book = a_book();
    food(book, "food", "1 kg", "0.65");
    supply(book, "napkin", "1", "0.06");
    for (std::string_view const benefits : {"0 %", "20 %"}) {
        book.shop.roles.clear();
        book.formulas.clear();
        role(book, "cook", "10.00", benefits);
        role(book, "server", "3.50", benefits);
        role(book, "dishwasher", "8.00", benefits);
        Formula& plate = formula(book, "plate", {{"food", "1 kg"}});
        plate.makes = quantity("1");
        plate.labour = {task("cook", "cook", "10"), task("serve", "server", "3"),
                        task("wash", "dishwasher", "1")};
        plate.consumables.push_back(uses("napkin", "1", Per::piece));
        link_well(book);
        Costed const one = costed(book, {sale(book, "plate", 1)});
        if (benefits == "0 %") {
            CHECK(one.cost.total[Category::labour] == money("1.975"));
            Number wages;
            std::vector<std::string> lines;
            for (TaskUse const& use : one.cost.tasks) {
                lines.push_back(printed(use.cost));
                wages += number(lines.back());
            }
            CHECK(lines == std::vector<std::string>{"1.67", "0.18", "0.13"});
            CHECK(wages == number("1.98"));
            CHECK(printed(one.cost.total.variable(book.shop)) == "2.69"); // 2.685
        } else {
            CHECK(one.cost.total[Category::labour] == money("2.37")); // 1.975 x 1.2
            CHECK(one.cost.total.prime() == money("3.02")); // printed 3.03 from rounded parts
            CHECK(money("0.65") + money("1.98") + money("0.40") == money("3.03"));
        }
    }
}

TEST_CASE("food at 3.75 and hands at 2.00 with 20 % on top are a prime cost of 6.15") {
    // Same book, p. 26
    Book book = a_book();
    food(book, "food", "1 kg", "3.75");
    role(book, "cook", "2.00", "20 %");
    Formula& plate = formula(book, "plate", {{"food", "1 kg"}});
    plate.makes = quantity("1");
    plate.labour.push_back(task("cook", "cook", "60"));
    link_well(book);
    CHECK(costed(book, {sale(book, "plate", 1)}).cost.total.prime() == money("6.15"));
}

TEST_CASE("what an employer pays on top of a wage") {
    // OpenStax Financial Accounting m67909: salary 2,000; FUTA 0.6 % 12, SUTA 100, Social Security 6.2 % 124,
    // Medicare 1.45 % 29, 60 % of 500 health 300: 565 on top, 28.25 %, 2,565 in all
    Number const on_top = number("12") + 100 + 124 + 29 + 300;
    CHECK(on_top / 2000 == percent("28.25 %"));
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "baker", "2000", "28.25 %");
    Formula& bread = formula(book, "bread", {{"flour", "1 kg"}});
    bread.makes = quantity("1");
    bread.labour.push_back(task("a month", "baker", "60"));
    link_well(book);
    CHECK(costed(book, {sale(book, "bread", 1)}).cost.total[Category::labour] == money("2565"));
}

TEST_CASE("hands are paid by order, batch, mix, load, piece and box; rising dough is not") {
    Book book = cookie_book();
    oven(book, "deck", "1 kW", "100 %", "0", "0.00");
    Formula& cookie = book.formulas[0];
    cookie.oven = baked_in("deck", "10", "8");
    cookie.batch_step = 1;
    cookie.largest_mix = 2;
    cookie.labour = {task("weigh", "baker", "5", Per::order), task("mix", "baker", "4", Per::batch),
                     task("turn", "baker", "3", Per::mix),    task("load", "baker", "2", Per::load),
                     task("ice", "baker", "1", Per::piece),   rest("rise", "60")};
    sold_as(cookie, "half dozen", "6")
        .labour.push_back(task("box", "baker", "1.5", Per::sale_unit));
    book.shop.order_work.push_back(task("invoice", "baker", "15", Per::order));
    link_well(book);
    Costed const order = costed(book, {sale(book, "cookie", 4, "half dozen")});
    // 24 cookies: 3 batches, 2 mixes, 3 loads, 24 pieces, 4 boxes, 1 order
    // 5 + 12 + 6 + 6 + 24 + 6 = 59 min of its own, 15 of the order; 74 min at 18.00 = 22.20
    CHECK(order.cost.lines[0].labour_minutes == 59);
    CHECK(order.cost.lines[0].direct[Category::labour] == money("17.70"));
    CHECK(order.cost.total[Category::labour] == money("22.20"));
    for (TaskUse const& use : order.cost.tasks)
        if (use.task->is_unattended) {
            CHECK(use.minutes == 180);
            CHECK(use.cost.is_zero());
        }
}

// Energy --------------------------------------------------------------------------------------------------

TEST_CASE("sixty watts for a thousand hours are sixty kilowatt-hours") {
    // OpenStax College Physics 2e m42714: 60 W x 1000 h at 0.12 = 7.20; 15 W 1.80
    for (auto const& [power, cost, energy] :
         {std::tuple("60 W", "7.20", 60), std::tuple("15 W", "1.80", 15)}) {
        Book book = a_book();
        food(book, "plum", "1 kg", "0.00");
        oven(book, "dryer", power, "100 %", "0", "0.12");
        Formula& dried = formula(book, "dried plum", {{"plum", "1 kg"}});
        dried.makes = quantity("1");
        dried.oven = baked_in("dryer", "60000", "1");
        link_well(book);
        Costed const one = costed(book, {sale(book, "dried plum", 1)});
        CHECK(one.cost.total[Category::energy] == money(cost));
        CHECK(one.cost.ovens[0].kilowatt_hours == energy);
    }
}

TEST_CASE(
    "an oven is heated once for an order, and those who bake in it share that by their time") {
    // 5.5 kW and 0.18; a: 2 loads of 15 min, b: 1 load of 10 min, at 45 %; preheating 20 min at full power.
    // 5.5 x (20 + 40 x 0.45) / 60 = 209/60 kWh, 0.627; a bears 30 of 40 minutes, b 10
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    oven(book, "deck", "5.5 kW", "45 %", "20", "0.18");
    for (std::string_view const name : {"a", "b"}) {
        Formula& each = formula(book, name, {{"flour", "1 kg"}});
        each.makes = quantity("10");
        each.oven = baked_in("deck", name == "a" ? "15" : "10", "10");
    }
    link_well(book);
    Costed const order = costed(book, {sale(book, "a", 20), sale(book, "b", 10)});
    CHECK(order.cost.total[Category::energy] == money("0.627"));
    CHECK(order.cost.ovens[0].kilowatt_hours == number("209/60"));
    CHECK(order.cost.ovens[0].minutes == 40);
    CHECK(order.cost.ovens[0].preheat == 20);
    CHECK(order.cost.lines[0].cost[Category::energy] == money("0.627") * number("3/4"));
    CHECK(order.cost.lines[1].oven_minutes == 15);
}

TEST_CASE("an oven that nothing is baked in is not heated") {
    Book book = cookie_book();
    oven(book, "deck", "5.5 kW", "45 %", "20", "0.18");
    CHECK(cookies(book, 10).cost.ovens.empty());
}

// Overhead, order work, delivery ----------------------------------------------------------------------------

TEST_CASE("overhead by the labour hour over three products") {
    // OpenStax Managerial Accounting m68135: 2,500,000 over 1,250,000 h = 2.00 an hour; 350k/140k, 400k/100k
    // and 500k/250k hours a unit; materials 3.50/6.00/11.70, labour 10/2.75/4.30; overhead 5/8/4, cost
    // 18.50/16.75/20.00
    CHECK(number("2500000") / 1'250'000 == 2);
    struct Row {
        std::string_view name, materials, hours, labour, overhead, cost;
    };
    constexpr Row rows[] = {{"solo", "3.50", "350/140", "10", "5", "18.50"},
                            {"band", "6.00", "400/100", "2.75", "8", "16.75"},
                            {"orchestra", "11.70", "500/250", "4.30", "4", "20.00"}};
    for (Row const& row : rows) {
        CAPTURE(row.name);
        Book book = a_book();
        food(book, "material", "1 kg", row.materials);
        role(book, "hand", "1").wage.amount = money(row.labour) / number(row.hours);
        overhead(book, "plant", Overhead::Driver::labour_hour, "2.00");
        Formula& unit = formula(book, row.name, {{"material", "1 kg"}});
        unit.makes = quantity("1");
        unit.labour.push_back(task("make", "hand", "0"));
        unit.labour.back().minutes = number(row.hours) * 60;
        link_well(book);
        Costed const one = costed(book, {sale(book, row.name, 1)});
        CHECK(one.cost.total[Category::labour] == money(row.labour));
        CHECK(one.cost.total[Category::overhead] == money(row.overhead));
        CHECK(one.cost.total.total() == money(row.cost));
    }
}

TEST_CASE("overhead by the labour dollar is overhead by the hour of a dollar") {
    // OpenStax Managerial Accounting m68004: 5,000 + 20,000 + 75,000 + 90,000 + 35,000 + 25,000 = 250,000 over
    // labour of 100,000 = 2.50; a job of 700 material and 66 labour: 700 + 66 + 165 = 931
    Number const all = number("5000") + 20'000 + 75'000 + 90'000 + 35'000 + 25'000;
    CHECK(all / 100'000 == number("2.5"));
    Book book = a_book();
    food(book, "material", "1 kg", "700");
    role(book, "hand", "1.00");
    overhead(book, "plant", Overhead::Driver::labour_hour, "2.50");
    Formula& job = formula(book, "job", {{"material", "1 kg"}});
    job.makes = quantity("1");
    job.labour.push_back(task("make", "hand", "3960")); // 66 h
    link_well(book);
    Costed const one = costed(book, {sale(book, "job", 1)});
    CHECK(one.cost.total[Category::overhead] == money("165"));
    CHECK(one.cost.total.total() == money("931"));
}

TEST_CASE("each kind of overhead goes by its own measure") {
    Book book = cookie_book();
    oven(book, "deck", "1 kW", "100 %", "10", "0.00");
    book.formulas[0].oven = baked_in("deck", "25", "10");
    book.formulas[0].labour.push_back(task("mix", "baker", "15"));
    book.shop.order_work.push_back(task("invoice", "baker", "20", Per::order));
    using Driver = Overhead::Driver;
    struct Row {
        Driver driver;
        std::string_view rate, cost, quantity;
    };
    // 20 cookies: 2 batches, 2.00 of flour; 30 min of hands and 20 of the order at 18.00: 9.00 and 6.00;
    // 2 loads of 25 min and 10 min of heating: an oven hour
    constexpr Row rows[] = {
        {Driver::labour_hour, "6.00", "5.00", "5/6"},
        {Driver::oven_hour, "1.50", "1.50", "1"},
        {Driver::order, "3.00", "3.00", "1"},
        {Driver::piece, "0.05", "1.00", "20"},
        {Driver::ingredients, "10 %", "0.20", "0"},
        {Driver::prime_cost, "10 %", "1.70", "0"}, // of 2.00 + 9.00, and of 6.00 in the pool
    };
    for (Row const& row : rows) {
        CAPTURE(row.cost);
        book.shop.overheads.clear();
        overhead(book, "rent", row.driver, row.rate);
        Costed const order = cookies(book, 20);
        CHECK(order.cost.total[Category::overhead] == money(row.cost));
        CHECK(order.cost.overheads[0].quantity == number(row.quantity));
    }
}

TEST_CASE("what is done once for an order is shared by the lines' own costs") {
    // lines of 3.00 and 1.00 of flour; the invoice takes 20 min at 18.00 = 6.00: 4.50 and 1.50
    Book book = cookie_book();
    formula(book, "biscuit", {{"flour", "1 kg"}}).makes = quantity("10");
    book.shop.order_work.push_back(task("invoice", "baker", "20", Per::order));
    link_well(book);
    Costed const order = costed(book, {sale(book, "cookie", 30), sale(book, "biscuit", 10)});
    CHECK(order.cost.lines[0].direct.total() == money("3.00"));
    CHECK(order.cost.lines[0].cost.total() == money("7.50"));
    CHECK(order.cost.lines[1].cost.total() == money("2.50"));
}

TEST_CASE("lines that cost nothing themselves share alike") {
    Book book = cookie_book();
    book.offers[0].price = money("0.00");
    formula(book, "biscuit", {{"flour", "1 kg"}}).makes = quantity("10");
    book.shop.order_work.push_back(task("invoice", "baker", "20", Per::order));
    link_well(book);
    Costed const order = costed(book, {sale(book, "cookie", 30), sale(book, "biscuit", 10)});
    CHECK(order.cost.lines[0].cost.total() == money("3.00"));
    CHECK(order.cost.lines[1].cost.total() == money("3.00"));
}

TEST_CASE("a drive is flat and by distance; it is in the prices or stands apart") {
    Book book = cookie_book();
    book.shop.delivery_flat = money("5.00");
    book.shop.delivery_rate = rate("0.60", "km");
    link_well(book);
    Delivery drive;
    drive.distance = quantity("12 km");
    Costed const inside = costed(book, {sale(book, "cookie", 10)}, Wholes::all, drive);
    CHECK(inside.cost.total[Category::delivery] == money("12.20"));
    CHECK(inside.cost.delivery_apart.is_zero());
    CHECK(inside.cost.all() == money("13.20"));
    for (DeliveryCharge const charge : {DeliveryCharge::at_cost, DeliveryCharge::amount}) {
        drive.charge = charge;
        Costed const apart = costed(book, {sale(book, "cookie", 10)}, Wholes::all, drive);
        CHECK(apart.cost.total[Category::delivery].is_zero());
        CHECK(apart.cost.delivery_apart == money("12.20"));
        CHECK(apart.cost.all() == money("13.20"));
    }
    CHECK(cookies(book, 10).cost.all() == money("1.00")); // collected
}

TEST_CASE(
    "a line of overhead that is variable is variable cost, shared over the lines as it falls") {
    // 10 and 30 cookies: 0.05 a piece is variable, 2.00 an order is not; the flour is 0.10 each
    Book book = cookie_book();
    overhead(book, "till roll", Overhead::Driver::piece, "0.05").is_variable = true;
    overhead(book, "phone", Overhead::Driver::order, "2.00");
    link_well(book);
    Costed const all =
        costed(book, {sale(book, "cookie", 10), sale(book, "cookie", 30)}, Wholes::all);
    CHECK(all.cost.lines[0].cost.variable(book.shop) == money("1.50"));
    CHECK(all.cost.lines[1].cost.variable(book.shop) == money("4.50"));
    CHECK(all.cost.total.variable(book.shop) == money("6.00"));
    CHECK(all.cost.total[Category::overhead] == money("4.00"));
}

TEST_CASE("a mile is longer than a kilometre") {
    // 1 mi = 1.609344 km
    Book book = cookie_book();
    book.shop.delivery_rate = rate("1.00", "km");
    link_well(book);
    Delivery drive;
    drive.distance = quantity("10 mi");
    CHECK(costed(book, {sale(book, "cookie", 10)}, Wholes::all, drive)
              .cost.total[Category::delivery] == money("16.09344"));
}

// What cannot be costed -------------------------------------------------------------------------------------

TEST_CASE("whatever an item needs and is not there is told, through all that it uses") {
    Book book = cookie_book();
    food(book, "honey"); // no price
    food(book, "box").kind = Ingredient::Kind::supply;
    formula(book, "glaze", {{"honey", "1 kg"}});
    book.formulas[0].lines.push_back(line({"glaze", "10 g"}));
    sold_as(book.formulas[0], "six", "6").packing.push_back(uses("box", "1", Per::sale_unit));
    formula(book, "bread", {{"flour", "1 kg"}});
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics const found =
        costing.findings(index_of(book, "cookie"), &book.find_formula("cookie")->sold_as.front());
    CHECK(found.errors() == 2);
    CHECK(says(in_words(found), "'honey' has no price"));
    CHECK(says(in_words(found), "'box' has no price"));
    CHECK(costing.findings(index_of(book, "bread")).empty());
    CHECK(costing.findings().errors() == 2);
}

TEST_CASE("a box for shells sold alone does not hold up the sandwich made of them") {
    Book book = cookie_book();
    food(book, "box").kind = Ingredient::Kind::supply; // no price
    sold_as(book.formulas[0], "six", "6").packing.push_back(uses("box", "1", Per::sale_unit));
    formula(book, "sandwich", {{"cookie", "2"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(linked(book), today);
    SaleUnit const& box = book.find_formula("cookie")->sold_as.front();
    CHECK(costing.findings(index_of(book, "cookie"), &box).has_errors());
    CHECK(!costing.findings(index_of(book, "sandwich")).has_errors());
}

TEST_CASE("a circle is told to whoever stands on it or above it, and to nobody else") {
    Book book = cookie_book();
    formula(book, "a", {{"b", "1 g"}});
    formula(book, "b", {{"a", "1 g"}});
    formula(book, "gift", {{"a", "1 g"}, {"cookie", "1"}});
    formula(book, "other circle", {{"other circle", "1 g"}});
    link_well(book);
    Costing const costing(linked(book), today);
    for (std::string_view const name : {"a", "b", "gift", "other circle"}) {
        Diagnostics const found = costing.findings(index_of(book, name));
        CHECK(finding(found, "formula-cycle"));
        CHECK(found.errors() == 1);
    }
    CHECK(costing.findings(index_of(book, "cookie")).empty());
    CHECK(finding(costing.findings(), "formula-cycle"));
}

TEST_CASE("a circle is told together with whatever else is wrong") {
    Book book = cookie_book();
    food(book, "honey"); // no price
    formula(book, "a", {{"b", "1 g"}, {"honey", "1 g"}});
    formula(book, "b", {{"a", "1 g"}});
    link_well(book);
    Diagnostics const found = Costing(linked(book), today).findings(index_of(book, "a"));
    CHECK(finding(found, "missing-price"));
    CHECK(finding(found, "formula-cycle"));
}

TEST_CASE("costing what has errors is a mistake of the caller") {
    Book book = cookie_book();
    food(book, "honey");
    book.formulas[0].lines.push_back(line({"honey", "10 g"}));
    link_well(book);
    Costing const costing(linked(book), today);
    CHECK_THROWS_AS((void)costing.cost({{sale(book, "cookie", 1)}, Wholes::all, {}}),
                    std::logic_error);
}

// Laws ------------------------------------------------------------------------------------------------------

namespace {

/// An order of a random book, costed as it is made, in exact parts, and with each line in a way of its own.
template <class Law> void for_random_costs(std::uint64_t count, Law law) {
    for_random_books(count, [&](Book const& book) {
        Costing const costing(linked(book), today);
        CostRequest mixed{sales_of(book), Wholes::all, book.orders.front().delivery};
        mixed.companions = {mixed.sales};
        for (std::size_t i = 0; i < mixed.sales.size(); ++i)
            mixed.ways.push_back(static_cast<CostedAs>((i + 1) % 3));
        law(book, costing, costing.cost(mixed));
        for (Wholes const wholes : {Wholes::all, Wholes::none}) {
            CAPTURE(wholes == Wholes::all);
            law(book, costing,
                costing.cost({sales_of(book), wholes, book.orders.front().delivery}));
        }
    });
}

} // namespace

TEST_CASE("in any order the lines add up to the total, in each category and together") {
    for_random_costs(200, [](Book const&, Costing const&, OrderCost const& cost) {
        CostByCategory sum;
        for (CostLine const& line : cost.lines) sum += line.cost;
        for (std::size_t i = 0; i < category_count; ++i)
            REQUIRE(sum.amounts[i] == cost.total.amounts[i]);
        REQUIRE(cost.total.total() + cost.delivery_apart == cost.all());
    });
}

TEST_CASE("in any order the parts of the yield loss add up to the ingredient cost of each line") {
    for_random_costs(200, [](Book const&, Costing const&, OrderCost const& cost) {
        Money sum;
        for (CostLine const& line : cost.lines) {
            REQUIRE(line.loss.total() == line.cost[Category::ingredients]);
            sum += line.loss.total();
        }
        REQUIRE(cost.loss.total() == sum);
        REQUIRE(cost.loss.total() == cost.total[Category::ingredients]);
    });
}

TEST_CASE("in any order every cent spent is in a category, and in one only") {
    for_random_costs(200, [](Book const& book, Costing const&, OrderCost const& cost) {
        Money ingredients;
        for (IngredientUse const& use : cost.ingredients) ingredients += use.cost;
        REQUIRE(ingredients == cost.total[Category::ingredients]);

        Money supplies;
        for (IngredientUse const& use : cost.supplies) supplies += use.cost;
        REQUIRE(supplies == cost.total[Category::consumables] + cost.total[Category::packaging]);

        Money labour;
        Number minutes;
        for (TaskUse const& use : cost.tasks) {
            labour += use.cost;
            if (!use.task->is_unattended && use.where != "order") minutes += use.minutes;
        }
        REQUIRE(labour == cost.total[Category::labour]);
        Number of_lines;
        for (CostLine const& line : cost.lines) of_lines += line.labour_minutes;
        REQUIRE(minutes == of_lines);

        Money energy;
        Number oven_minutes;
        for (OvenUsed const& used : cost.ovens) {
            energy += used.cost;
            oven_minutes += used.minutes + used.preheat;
        }
        REQUIRE(energy == cost.total[Category::energy]);
        of_lines = 0;
        for (CostLine const& line : cost.lines) of_lines += line.oven_minutes;
        REQUIRE(oven_minutes == of_lines);

        Money overhead;
        for (OverheadUse const& use : cost.overheads) overhead += use.cost;
        REQUIRE(overhead == cost.total[Category::overhead]);

        Money delivery;
        if (auto const& drive = book.orders.front().delivery)
            delivery = delivery_cost(book.shop, *drive).total();
        REQUIRE(delivery == cost.total[Category::delivery] + cost.delivery_apart);
    });
}

TEST_CASE("in any order packs cover what is bought, and one pack less would not") {
    for_random_costs(200, [](Book const&, Costing const&, OrderCost const& cost) {
        for (auto const* uses : {&cost.ingredients, &cost.supplies})
            for (IngredientUse const& use : *uses) {
                REQUIRE(Number(use.packs) * use.purchase->content >= use.bought);
                REQUIRE(Number(use.packs - 1) * use.purchase->content < use.bought);
                REQUIRE(use.outlay == use.purchase->pack_outlay * Number(use.packs));
                REQUIRE(use.purchase->pack_cost * Number(use.packs) >=
                        use.purchase->unit_cost * use.bought);
            }
    });
}

TEST_CASE(
    "in a long run, what an item's ingredients cost is what its formula says, read downwards") {
    // The plain definition, by recursion and one unit at a time, against demand run down and cost run up.
    for_random_books(200, [](Book const& book) {
        Costing const costing(linked(book), today);
        Formulary const& formulary = costing.formulary();
        std::function<Money(std::size_t)> const of_one = [&](std::size_t index) {
            Batch const& batch = formulary.with_losses[index];
            Money cost;
            for (BatchLine const& line : batch.lines)
                cost += line.is_formula
                            ? of_one(line.index) * line.amount
                            : formulary.costs.purchases[line.index]->unit_cost * line.bought;
            return cost / (book.formulas[index].makes_pieces() ? batch.pieces * batch.survival
                                                               : batch.mass_out);
        };
        OrderCost const cost = costing.cost({sales_of(book), Wholes::none, {}});
        for (CostLine const& line : cost.lines)
            REQUIRE(line.cost[Category::ingredients] ==
                    of_one(line.sale.formula) * (line.sale.count * line.sale.holds()));
    });
}

TEST_CASE("an order a hundred times as large costs a hundred times the ingredients in a long run") {
    for_random_books(200, [](Book const& book) {
        Costing const costing(linked(book), today);
        std::vector<Sale> sales = sales_of(book);
        OrderCost const one = costing.cost({sales, Wholes::none, {}});
        for (Sale& sale : sales) sale.count *= 100;
        OrderCost const hundred = costing.cost({sales, Wholes::none, {}});
        REQUIRE(hundred.total[Category::ingredients] == one.total[Category::ingredients] * 100);
        REQUIRE(hundred.loss.trim == one.loss.trim * 100);
        REQUIRE(hundred.loss.process == one.loss.process * 100);
    });
}

TEST_CASE("what an order takes and does not use up is never less than a long run takes") {
    for_random_books(200, {false, false, true}, [](Book const& book) {
        Costing const costing(linked(book), today);
        OrderCost const run = costing.cost({sales_of(book), Wholes::none, {}});
        OrderCost const order = costing.cost({sales_of(book), Wholes::all, {}});
        REQUIRE(run.loss.rounding.is_zero());
        REQUIRE(!order.loss.rounding.is_negative());
        for (std::size_t i = 0; i < order.lines.size(); ++i)
            REQUIRE(order.lines[i].loss.in_the_piece == run.lines[i].loss.in_the_piece);
    });
}

TEST_CASE("the same amounts in other units cost the same") {
    for_random_books(200, [](Book const& book) {
        Book other = book;
        for (Formula& formula : other.formulas)
            for (Line& line : formula.lines) {
                auto* amount = std::get_if<Quantity>(&line.amount);
                if (amount == nullptr || line.of != Line::Of::ingredient) continue;
                Ingredient const& what = other.ingredients[line.item.index];
                Number const grams = grams_of(*amount, what).value();
                if (!what.densities.empty()) // one density row: by the cup
                    *amount = quantity(exact(grams / what.densities[0].grams_per_millilitre /
                                             find_unit("cup", Measures::us)->factor) +
                                       " cup");
                else // pounds, and ounces for the rest
                    *amount = quantity(fmt::format(
                        "{} lb {} oz", exact(round_to(grams / number("453.59237"), 1, Tie::down)),
                        exact((grams - round_to(grams, number("453.59237"), Tie::down)) /
                              number("28.349523125"))));
            }
        Costing const before(linked(book), today);
        Costing const after(linked(other), today);
        OrderCost const a = before.cost({sales_of(book), Wholes::all, {}});
        OrderCost const b = after.cost({sales_of(other), Wholes::all, {}});
        for (std::size_t i = 0; i < category_count; ++i)
            REQUIRE(a.total.amounts[i] == b.total.amounts[i]);
        for (std::size_t i = 0; i < a.lines.size(); ++i)
            REQUIRE(a.lines[i].cost.total() == b.lines[i].cost.total());
    });
}

TEST_CASE("a formula that the order does not use changes nothing") {
    for_random_books(200, [](Book const& book) {
        Book larger = book;
        Formula stranger;
        stranger.name = "stranger";
        stranger.lines.push_back(line({larger.ingredients[0].name, "3 kg"}));
        stranger.lines.push_back(line({larger.formulas[0].name, "40 g"}));
        stranger.oven = baked_in(larger.shop.ovens[0].name, "30", "2 kg");
        stranger.labour.push_back(task("work", larger.shop.roles[0].name, "90"));
        larger.formulas.insert(larger.formulas.begin(), stranger);
        link_well(larger);
        Costing const before(linked(book), today);
        Costing const after(linked(larger), today);
        OrderCost const a = before.cost({sales_of(book), Wholes::all, book.orders[0].delivery});
        OrderCost const b = after.cost({sales_of(larger), Wholes::all, larger.orders[0].delivery});
        REQUIRE(a.lines.size() == b.lines.size());
        for (std::size_t i = 0; i < a.lines.size(); ++i) {
            for (std::size_t c = 0; c < category_count; ++c)
                REQUIRE(a.lines[i].cost.amounts[c] == b.lines[i].cost.amounts[c]);
            REQUIRE(a.lines[i].loss.trim == b.lines[i].loss.trim);
        }
        REQUIRE(a.formulas.size() == b.formulas.size());
    });
}

TEST_CASE("two lines of one item cost what one line of both does") {
    for_random_books(200, [](Book const& book) {
        Costing const costing(linked(book), today);
        Sale const all = sales_of(book).front();
        Sale part = all;
        part.count = 1;
        Sale others = all;
        others.count = all.count - 1;
        if (others.count.is_zero()) return;
        OrderCost const one = costing.cost({{all}, Wholes::none, {}});
        OrderCost const two = costing.cost({{part, others}, Wholes::none, {}});
        for (std::size_t i = 0; i < category_count; ++i)
            REQUIRE(one.total.amounts[i] == two.total.amounts[i]);
    });
}

TEST_CASE("the price of a sack, doubled, doubles what an order's ingredients cost") {
    for_random_books(200, [](Book const& book) {
        LinkedBook const dearer = linked(book).with([](Book& copy) {
            for (Offer& offer : copy.offers) {
                offer.price *= 2;
                offer.freight *= 2;
                offer.deposit *= 2;
            }
        });
        Costing const before(linked(book), today);
        Costing const after(dearer, today);
        OrderCost const a = before.cost({sales_of(book), Wholes::all, {}});
        OrderCost const b = after.cost({sales_of(dearer.book()), Wholes::all, {}});
        for (Category const each :
             {Category::ingredients, Category::consumables, Category::packaging})
            REQUIRE(b.total[each] == a.total[each] * 2);
        REQUIRE(b.total[Category::labour] == a.total[Category::labour]);
        REQUIRE(b.total[Category::energy] == a.total[Category::energy]);
    });
}
