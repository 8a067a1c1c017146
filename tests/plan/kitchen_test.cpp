#include <groat/plan/kitchen.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Sandwiches of two shells and 20 g of a jam that is cooked by the 1 kg pot and kept; sold in boxes of 12.
Book sandwiches() {
    Book book = a_book();
    food(book, "flour", "10 kg", "12.00");
    food(book, "plum", "10 kg", "30.00");
    supply(book, "box", "100", "40.00");
    supply(book, "bag", "100", "9.00");
    formula(book, "shell", {{"flour", "250 g"}}).makes = quantity("10");
    Formula& jam = formula(book, "jam", {{"plum", "1 kg"}});
    jam.batch_step = 1;
    jam.keeps_leftover = true;
    jam.consumables.push_back(uses("bag", "1", Per::order));
    Formula& sandwich = formula(book, "sandwich", {{"shell", "2"}, {"jam", "20 g"}});
    sandwich.makes = quantity("1");
    sold_as(sandwich, "box of 12", "12").packing.push_back(uses("box", "1", Per::sale_unit));
    Order& first = order(book, "A");
    first.due = day("2026-12-01");
    wants(first, "sandwich", 6, "box of 12");
    Order& second = order(book, "B");
    second.due = day("2026-12-08");
    wants(second, "sandwich", 2, "box of 12");
    return book;
}

StockItem& in_stock(Book& book, std::string_view item, std::string_view amount,
                    std::string_view as = "") {
    StockItem lot;
    lot.item = named(item);
    lot.amount = quantity(amount);
    if (!as.empty()) lot.sale_unit = named(as);
    book.stock.items.push_back(std::move(lot));
    return book.stock.items.back();
}

struct Planned {
    Book book;
    Diagnostics found;
    Kitchen plan;
    OwnGoods goods;

    explicit Planned(Book wanted, std::initializer_list<std::string_view> ids = {"A"})
        : book(std::move(wanted)) {
        link_well(book);
        costing.emplace(linked(book), today);
        std::vector<Order const*> orders;
        for (std::string_view const id : ids) orders.push_back(book.find_order(id));
        goods = OwnGoods(costing->book(), found);
        plan = kitchen_of(*costing, orders, goods);
        warn_of_past_goods(plan, orders, goods, *costing, found);
    }
    [[nodiscard]] FormulaRun const& run(std::string_view name) const {
        return plan.explosion.runs[plan.explosion.run_of[index_of(book, name)]];
    }
    [[nodiscard]] Number used(std::string_view name) const {
        for (auto const* uses : {&plan.ingredients, &plan.supplies})
            for (IngredientUse const& use : *uses)
                if (book.ingredients[use.ingredient].name == name) return use.bought;
        return 0;
    }
    [[nodiscard]] Number left(std::string_view name, std::string_view on = "2026-12-01") const {
        auto const loose = goods.loose(day(on));
        auto const found_there = loose.find(index_of(book, name));
        return found_there == loose.end() ? Number() : found_there->second;
    }

private:
    std::optional<Costing> costing;
};

} // namespace

TEST_CASE("without own goods everything is made") {
    Planned const plan(sandwiches());
    CHECK(plan.run("sandwich").made == 72);
    CHECK(plan.run("shell").started == 144);
    CHECK(plan.used("flour") == 3600); // 144 shells of 25 g
    CHECK(plan.used("plum") == 2000);  // 72 * 20 g = 1.44 kg are two pots
    CHECK(plan.used("box") == 6);
    CHECK(plan.used("bag") == 1);
}

TEST_CASE("a box that is packed needs neither a sandwich nor packing") {
    Book book = sandwiches();
    in_stock(book, "sandwich", "2", "box of 12");
    Planned const plan(book);
    CHECK(plan.plan.ordered.front().ready == 2);
    CHECK(plan.plan.ordered.front().to_pack() == 4);
    CHECK(plan.run("sandwich").made == 48);
    CHECK(plan.used("box") == 4);
    CHECK(plan.used("flour") == 2400);
}

TEST_CASE("sandwiches of the stock are packed, and shells of the stock are not baked") {
    Book book = sandwiches();
    in_stock(book, "sandwich", "12");
    in_stock(book, "shell", "80");
    Planned const plan(book);
    CHECK(plan.run("sandwich").from_stock == 12);
    CHECK(plan.run("sandwich").made == 60);
    CHECK(plan.run("shell").demand == 120);
    CHECK(plan.run("shell").started == 40); // 120 less 80
    CHECK(plan.used("flour") == 1000);
    CHECK(plan.used("box") == 6);
    CHECK(plan.left("shell").is_zero());
}

TEST_CASE("a pot that is there is not cooked, nor is anything used for cooking it") {
    Book book = sandwiches();
    in_stock(book, "jam", "1.5 kg");
    Planned const plan(book);
    CHECK(plan.run("jam").from_stock == 1440);
    CHECK_FALSE(Kitchen::is_made(plan.run("jam")));
    CHECK(plan.used("plum").is_zero());
    CHECK(plan.used("bag").is_zero()); // once per order, but not where none is cooked
    CHECK(plan.left("jam") == 60);
}

TEST_CASE("what is left of a pot and kept is there for the next order") {
    Planned const plan(sandwiches());
    CHECK(plan.left("jam") == 560); // 2 kg less 1.44 kg
}

TEST_CASE("breakage is calculated only for what is made") {
    Book book = sandwiches();
    lose(book.formulas.front(), "breakage", "20 %", LossStage::pieces);
    in_stock(book, "shell", "100");
    Planned const plan(book);
    CHECK(plan.run("shell").started == 55); // 44 good of 144
}

TEST_CASE("more in stock than is wanted stays there") {
    Book book = sandwiches();
    in_stock(book, "sandwich", "100");
    in_stock(book, "sandwich", "9", "box of 12");
    Planned const plan(book);
    CHECK(plan.plan.ordered.front().ready == 6);
    CHECK(plan.plan.explosion.runs.empty());
    CHECK(plan.plan.ingredients.empty());
    CHECK(plan.plan.supplies.empty());
    CHECK(plan.left("sandwich") == 100);
}

TEST_CASE("own goods must be good on the day that the first order is wanted") {
    Book book = sandwiches();
    in_stock(book, "shell", "80").good_until = day("2026-11-30");
    Planned const late(book);
    CHECK(late.run("shell").started == 144);
    REQUIRE(finding(late.found, "stock-past"));
    CHECK(says(finding(late.found, "stock-past")->what, "good until 2026-11-30"));
    book.stock.items.front().good_until = day("2026-12-01");
    Planned const fit(book);
    CHECK(fit.run("shell").started == 64);
    CHECK(fit.found.empty());
}

TEST_CASE("a packed box goes to an order that is due while it is good") {
    Book book = sandwiches();
    in_stock(book, "sandwich", "7", "box of 12").good_until = day("2026-12-05");
    Planned const plan(book, {"B", "A"});
    CHECK(plan.plan.ordered[0].ready.is_zero()); // due on the 8th
    CHECK(plan.plan.ordered[1].ready == 6);
}

TEST_CASE("of two lots the one that ends first goes first") {
    Book book = sandwiches();
    in_stock(book, "shell", "100").good_until = day("2027-01-01");
    in_stock(book, "shell", "100").good_until = day("2026-12-02");
    Planned const plan(book);
    CHECK(plan.left("shell", "2026-12-03") == 56); // 200 less 144, all of the later lot
}

TEST_CASE("own goods that cannot be counted say what to write") {
    Book book = sandwiches();
    in_stock(book, "shell", "2 kg");
    in_stock(book, "sandwich", "1/2", "box of 12");
    in_stock(book, "jam", "3");
    Planned const plan(book);
    CHECK(plan.found.errors() == 3);
    CHECK(says(in_words(plan.found), "'shell' in stock is counted, in whole pieces"));
    CHECK(says(in_words(plan.found), "'sandwich' in stock is counted, in whole packs"));
    CHECK(says(in_words(plan.found), "'jam' is made by mass"));
}
