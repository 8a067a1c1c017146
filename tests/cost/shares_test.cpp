#include "books.hpp"
#include "random_book.hpp"

#include <groat/cost/engine.hpp>

using namespace groat;
using namespace groat::test;

namespace {

/// Shells by whole batches of 20: a kilogram at 1.00, 10 minutes at 18.00; usually 40 at a time.
Book shell_book() {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "baker", "18.00");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}});
    shell.makes = quantity("20");
    shell.batch_step = 1;
    shell.labour.push_back(task("mix", "baker", "10"));
    shell.standard_run = 40;
    link_well(book);
    return book;
}

CostRequest asked(std::vector<Sale> sales, CostedAs way,
                  std::vector<std::vector<Sale>> companions = {}) {
    CostRequest request{std::move(sales)};
    request.ways.assign(request.sales.size(), way);
    request.companions = std::move(companions);
    return request;
}

} // namespace

TEST_CASE("one order costs differently alone, made together with another, and in a usual run") {
    // 25 shells and another order of 15. Alone: 2 batches, 2.00 + 6.00. Together: 40, the same 2 batches, of which
    // the other would take 1 alone: 25 pay 2/3 of 8.00. A usual run of 40 is 8.00 as well: 25 pay 25/40 of it.
    Book const book = shell_book();
    Costing const costing(linked(book), today);
    std::vector<Sale> const ours{sale(book, "shell", 25)};
    std::vector<Sale> const others{sale(book, "shell", 15)};
    OrderCost const alone = costing.cost(asked(ours, CostedAs::alone, {others}));
    CHECK(alone.all() == money("8.00"));
    OrderCost const together = costing.cost(asked(ours, CostedAs::made_together, {others}));
    CHECK(together.all() == money("16/3"));
    CHECK(together.total[Category::ingredients] == money("4/3"));
    CHECK(together.total[Category::labour] == money("4.00"));
    OrderCost const usual = costing.cost(asked(ours, CostedAs::usual_run, {others}));
    CHECK(usual.all() == money("5.00"));
    // the other pays the rest of the 8.00
    CHECK(costing.cost(asked(others, CostedAs::made_together, {ours})).all() == money("8/3"));
    // without another order, together is alone
    CHECK(costing.cost(asked(ours, CostedAs::made_together)).all() == money("8.00"));
}

TEST_CASE("each line of an order may be costed in a way of its own") {
    // 10 and 15, alone two batches, 8.00: 10 bear 3.20 of that, whatever way the others go; 15 in a usual run: 3.00
    Book const book = shell_book();
    Costing const costing(linked(book), today);
    CostRequest request =
        asked({sale(book, "shell", 10), sale(book, "shell", 15)}, CostedAs::alone);
    CHECK(costing.cost(request).all() == money("8.00"));
    request.ways[1] = CostedAs::usual_run;
    OrderCost const cost = costing.cost(request);
    CHECK(cost.lines[0].cost.total() == money("3.20"));
    CHECK(cost.lines[1].cost.total() == money("3.00"));
    CHECK(of_formula(cost, book, "shell").run.demand == 25);
}

TEST_CASE("orders made together heat the oven once, and fill one load, and share whole packs") {
    // 30 each: a load of 60 at 10 minutes and 20 minutes of heating, 6 kW at 0.10 a kWh; a bottle of 6.00
    Book book = a_book();
    food(book, "flour", "1 kg", "0.00");
    food(book, "colour", "100 g", "6.00").buys_whole_packs = true;
    oven(book, "deck", "6 kW", "50 %", "20", "0.10");
    Formula& shell = formula(book, "shell", {{"flour", "1 kg"}, {"colour", "10 g"}});
    shell.makes = quantity("10");
    shell.oven = baked_in("deck", "10", "60");
    link_well(book);
    Costing const costing(linked(book), today);
    std::vector<Sale> const ours{sale(book, "shell", 30)};
    OrderCost const alone = costing.cost(asked(ours, CostedAs::alone));
    // 6 x (20 + 10 / 2) / 60 = 2.5 kWh
    CHECK(alone.total[Category::energy] == money("0.25"));
    CHECK(alone.total[Category::ingredients] == money("6.00"));
    OrderCost const together = costing.cost(asked(ours, CostedAs::made_together, {ours}));
    CHECK(together.total[Category::energy] == money("0.125"));
    CHECK(together.total[Category::ingredients] == money("3.00"));
    CHECK(together.lines.front().oven_minutes == 15);
}

// Laws ------------------------------------------------------------------------------------------------------

TEST_CASE(
    "no order, and no category of it, costs more together than alone, and shares add up to the whole") {
    std::size_t gained = 0;
    for_random_books(200, [&](Book drawn) {
        // what each order pays for itself, whoever it is made with
        drawn.shop.order_work.clear();
        std::erase_if(drawn.shop.overheads,
                      [](Overhead const& each) { return each.driver == Overhead::Driver::order; });
        Book const book = std::move(drawn);
        Costing const costing(linked(book), today);
        std::vector<std::vector<Sale>> orders(2);
        std::vector<Sale> all = sales_of(book);
        if (all.size() == 1) all.push_back(all.front());
        for (std::size_t i = 0; i < all.size(); ++i) orders[i % 2].push_back(all[i]);
        OrderCost const whole = costing.cost(asked(all, CostedAs::alone));
        CostByCategory sum;
        for (std::size_t i = 0; i < 2; ++i) {
            OrderCost const alone = costing.cost(asked(orders[i], CostedAs::alone));
            OrderCost const together =
                costing.cost(asked(orders[i], CostedAs::made_together, {orders[1 - i]}));
            for (std::size_t c = 0; c < category_count; ++c)
                REQUIRE(together.total.amounts[c] <= alone.total.amounts[c]);
            if (together.all() < alone.all()) ++gained;
            sum += together.total;
        }
        // whole packs of a supply are shared as each order uses it alone, for packing or on the way
        auto const supplies = [](CostByCategory const& cost) {
            return cost[Category::consumables] + cost[Category::packaging];
        };
        REQUIRE(supplies(sum) == supplies(whole.total));
        for (Category const each :
             {Category::ingredients, Category::labour, Category::energy, Category::overhead})
            REQUIRE_MESSAGE(sum[each] == whole.total[each], static_cast<int>(each));
    });
    CHECK(gained * one_book_in() > 100);
}
