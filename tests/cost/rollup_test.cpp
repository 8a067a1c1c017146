#include "books.hpp"
#include "plain_orders.hpp"
#include "random_book.hpp"

#include <groat/cost/engine.hpp>
#include <groat/cost/kept_goods.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// A filling by the pot, of which the leftover is kept: 4 kg of plums at 2.00 boil down by a quarter to 3 kg, which
/// takes 30 minutes at 18.00 a pot and a stove of 2 kW at 0.20 for an hour. And a bun that takes 50 g of it.
Book pot_book() {
    Book book = a_book();
    food(book, "plum", "1 kg", "2.00");
    food(book, "flour", "1 kg", "1.00");
    role(book, "cook", "18.00");
    oven(book, "stove", "2 kW", "100 %", "0", "0.20");
    Formula& butter = formula(book, "plum butter", {{"plum", "4 kg"}});
    lose(butter, "boiling", "25 %", LossStage::before_portioning);
    butter.oven = baked_in("stove", "60", "4 kg");
    butter.labour.push_back(task("stir", "cook", "30"));
    butter.keeps_leftover = true;
    formula(book, "bun", {{"flour", "50 g"}, {"plum butter", "50 g"}}).makes = quantity("1");
    link_well(book);
    return book;
}

CostByCategory cost_of(Book const& book, Sale const& sale) {
    Costing const costing(linked(book), today);
    return costing.cost({{sale}}).total;
}

} // namespace

TEST_CASE("what is kept is costed by the pot it is made in, and an order pays for what it takes") {
    // a pot of 3 kg: plums 8.00, 9.00 for the cook, 0.40 for the stove. 20 buns take 1 kg, a third of it
    Book const book = pot_book();
    Costing const costing(linked(book), today);
    KeptGood const* const pot = costing.kept(index_of(book, "plum butter"));
    REQUIRE(pot != nullptr);
    CHECK(pot->good == 3000);
    CHECK(pot->run.made == 1);
    OrderCost const buns = costing.cost({{sale(book, "bun", 20)}});
    CHECK(buns.total[Category::ingredients] == money("1.00") + money("8.00") / 3);
    CHECK(buns.total[Category::labour] == money("3.00"));
    CHECK(buns.total[Category::energy] == money("0.40") / 3);
    FormulaUse const& butter = of_formula(buns, book, "plum butter");
    CHECK(butter.run.is_taken);
    CHECK(butter.run.demand == 1000);
    // the record tells of its plums and minutes, so that the tables add up
    CHECK(of_ingredient(buns, book, "plum").bought == number("4000/3"));
    CHECK(buns.tasks.front().minutes == 10);
}

TEST_CASE("what is kept is costed at its own run: as it says, else a full mix, else one batch") {
    Book book = pot_book();
    Formula& butter = book.formulas[0];
    auto const good = [&] {
        Costing const costing(linked(book), today);
        return costing.kept(0)->good;
    };
    CHECK(good() == 3000);
    butter.largest_mix = number("1/2");
    CHECK(good() == 1500);
    butter.standard_run = 2000; // 2/3 of a batch
    CHECK(good() == 2000);
    butter.batch_step = number("1/2"); // made by halves: a whole one
    CHECK(good() == 3000);
    // the shop's run is for what is sold
    butter.standard_run.reset();
    butter.largest_mix.reset();
    book.shop.standard_run = 500;
    CHECK(good() == 3000);
}

TEST_CASE(
    "of what is kept by the piece all of the dough is portioned, and the good ones share its cost") {
    // 1 kg at 30 g: 33 shells, of which 2 in 11 break: 27 good ones share a batch of 1.00 and 33 x 1 minute
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "cook", "18.00");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.portion = quantity("30 g");
    shell.losses.push_back({"breakage", *Loss::of(number("2/11")), LossStage::pieces});
    shell.labour.push_back(task("shape", "cook", "1", Per::piece));
    shell.keeps_leftover = true;
    link_well(book);
    Costing const costing(linked(book), today);
    CHECK(costing.kept(0)->run.started == 33);
    CHECK(costing.kept(0)->good == 27);
    OrderCost const order = costing.cost({{sale(book, "shell", 54)}});
    CHECK(order.total[Category::ingredients] == money("2.00"));
    CHECK(order.total[Category::labour] == money("19.80"));
}

TEST_CASE("what is done for every order is paid by the order that takes what is kept, once") {
    Book book = pot_book();
    book.formulas[0].labour.push_back(task("thaw", "cook", "10", Per::order));
    link_well(book);
    Costing const costing(linked(book), today);
    CHECK(costing.kept(0)->unit.labour == money("9.00") / 3000);
    // 20 buns: 3.00 of the pot, and 10 minutes
    CHECK(cost_of(book, sale(book, "bun", 20))[Category::labour] == money("6.00"));
    CHECK(cost_of(book, sale(book, "bun", 40))[Category::labour] == money("9.00"));
}

TEST_CASE("a part of a batch is paid as a whole one, unless the task or supply scales") {
    // 15 of a batch of 10: one and a half; 6 minutes a batch at 18.00, a bag a batch at 0.50
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    supply(book, "bag", "1", "0.50");
    role(book, "cook", "18.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("10");
    cookie.labour.push_back(task("mix", "cook", "6"));
    cookie.consumables.push_back(uses("bag", "1"));
    link_well(book);
    CostByCategory const begun = cost_of(book, sale(book, "cookie", 15));
    CHECK(begun[Category::labour] == money("3.60"));
    CHECK(begun[Category::consumables] == money("1.00"));
    book.formulas[0].labour[0].scales = true;
    book.formulas[0].consumables[0].amount = 2;
    book.formulas[0].consumables[0].scales = true; // 3 of them
    CostByCategory const scaled = cost_of(book, sale(book, "cookie", 15));
    CHECK(scaled[Category::labour] == money("2.70"));
    CHECK(scaled[Category::consumables] == money("1.50"));
}

// Laws ------------------------------------------------------------------------------------------------------

TEST_CASE("in any book what is kept costs in proportion to what is taken of it") {
    std::size_t met = 0;
    for_random_books(200, [&](Book const& drawn) {
        Book const book = without_what_belongs_to_orders(drawn);
        Costing const costing(linked(book), today);
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            if (!book.formulas[i].keeps_leftover) continue;
            ++met;
            auto const cost = [&](Number const& count) {
                return costing.cost({{{i, nullptr, count}}}).total;
            };
            CostByCategory sum = cost(7);
            sum += cost(number("22/3"));
            CostByCategory const all = cost(7 + number("22/3"));
            for (std::size_t c = 0; c < category_count; ++c)
                REQUIRE(sum.amounts[c] == all.amounts[c]);
        }
    });
    CHECK(met * one_book_in() > 100);
}
