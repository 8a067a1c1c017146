#include "sheets.hpp"

#include <groat/paper/cost_sections.hpp>
#include <groat/paper/price_makeup.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Figures const figures(currency());

/// Four boxes of five, for 20.00 of ingredients and 6.00 of labour, at 8.00 a box.
QuoteLine boxes() {
    static SaleUnit const unit{"box of 5", quantity("5"), {}, {}, {}, {}};
    QuoteLine line;
    line.unit = &unit;
    line.count = 4;
    line.pieces = 20;
    line.cost[Category::ingredients] = money("20.00");
    line.cost[Category::labour] = money("6.00");
    line.burden.cost = money("6.50");
    line.burden.ingredients = money("5.00");
    line.burden.fee.share = share_of<FeeRate>("2 %");
    line.has_price = true;
    line.price = coins("8.00");
    line.net_price = money("8.00");
    line.earned = earned(line.net_price, line.burden);
    return line;
}

} // namespace

TEST_CASE("a target is told in words") {
    CHECK(in_words(share_of<Margin>("40 %"), figures) == "a margin of 40 %");
    CHECK(in_words(share_of<Markup>("33 1/3 %"), figures) == "a markup of 33.33 %");
    CHECK(in_words(share_of<FoodCostShare>("30 %"), figures) == "a food cost of 30 %");
    CHECK(in_words(Contribution{money("2")}, figures) == "a contribution of 2.00 each");
    CHECK(in_words(GivenPrice{money("3.50")}, figures) == "a given price of 3.50");
}

TEST_CASE("where a price goes, by the piece, the box and the line") {
    Shop shop;
    shop.currency = currency();
    Table const makeup = price_makeup(boxes(), shop, "line_costs", "The line");
    // a piece: 1.00 + 0.30 = 1.30; fee 2 % of 1.60 = 0.032; profit 0.268; price 1.60
    CHECK(shown(makeup, "ingredients", "piece") == "1.0000");
    CHECK(shown(makeup, "labour", "piece") == "0.3000");
    CHECK(shown(makeup, "cost", "piece") == "1.3000");
    CHECK(shown(makeup, "fee", "piece") == "0.0320");
    CHECK(shown(makeup, "profit", "piece") == "0.2680");
    CHECK(shown(makeup, "net", "piece") == "1.6000");
    CHECK(shown(makeup, "cost", "unit") == "6.500");
    CHECK(shown(makeup, "fee", "all") == "0.64");
    CHECK(shown(makeup, "net", "all") == "32.00");
    CHECK(what_does_not_add_up(makeup, "USD").empty());
}

TEST_CASE("without a price a table ends with the cost") {
    Shop shop;
    shop.currency = currency();
    QuoteLine line = boxes();
    line.has_price = false;
    Table const makeup = price_makeup(line, shop, "costs", "the run");
    CHECK(find_row(makeup, "net") == nullptr);
    CHECK(find_row(makeup, "cost")->kind == Row::Kind::total);
}

TEST_CASE("what is sold by mass has no column for a piece") {
    SaleUnit const jar{"jar", quantity("250 g"), {}, {}, {}, {}};
    Shop shop;
    shop.currency = currency();
    QuoteLine line = boxes();
    line.unit = &jar;
    line.pieces = 4;
    for (Column const& column : price_makeup(line, shop, "costs", "the line").columns)
        CHECK(column.key != "piece");
}

TEST_CASE("the yield loss is shown in money and in shares that make a hundred") {
    // thirds: 1/3 of 1.00 each in the piece, trim and process
    YieldLoss const loss{money("1/3"), money("1/3"), money("1/3"), money("0")};
    Table const shares = yield_loss_table(loss, figures);
    CHECK(shown(shares, "in_the_piece", "cost") == "0.34");
    CHECK(shown(shares, "trim", "cost") == "0.33");
    CHECK(shown(shares, "total", "cost") == "1.00");
    CHECK(shown(shares, "in_the_piece", "share") == "33.4");
    CHECK(shown(shares, "process", "share") == "33.3");
    CHECK(shown(shares, "total", "share") == "100.0");
}

TEST_CASE("no ingredients, no shares of them") {
    Table const shares = yield_loss_table({}, figures);
    CHECK(shown(shares, "total", "share") == "0.0");
}

TEST_CASE("the record says from whom each thing is bought, and why") {
    Book book = a_book();
    food(book, "flour");
    offer(book, "flour", "25 lb", "13.80", "the mill").from = day("2026-10-01");
    offer(book, "flour", "5 lb", "4.29", "the mill");
    food(book, "butter", "1 lb", "4.20").preferred_supplier = named("the mill");
    formula(book, "shell", {{"flour", "620 g"}, {"butter", "310 g"}}).makes = quantity("40");
    link_well(book);
    Costing const costing(book, today);
    OrderCost const cost = costing.cost({{sale(book, "shell", 40)}, Wholes::all, {}});
    Table const bought = purchase_table(cost, book, figures);
    CHECK(shown(bought, "flour", "offer") ==
          "the mill, 25 lb at 13.80 since 2026-10-01 (cheapest of 2)");
    CHECK(shown(bought, "butter", "offer") == "the mill, 1 lb at 4.20 (preferred)");
    CHECK(shown(bought, "flour", "packs") == "1");
    CHECK(shown(bought, "total", "outlay") == "18.00");
}

TEST_CASE("whole packs are marked, and what is kept for later is taken off") {
    // 4 kg of flour for four batches, 3.5 needed; colour 20 g of a 100 g bottle
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    food(book, "colour", "100 g", "6.00").buys_whole_packs = true;
    Formula& dough = formula(book, "dough", {{"flour", "995 g"}, {"colour", "5 g"}});
    dough.batch_step = 1;
    dough.keeps_leftover = true;
    formula(book, "bun", {{"dough", "100 g"}}).makes = quantity("1");
    link_well(book);
    Costing const costing(book, today);
    OrderCost const cost = costing.cost({{sale(book, "bun", 35)}, Wholes::all, {}});
    Table const ingredients = ingredient_table(cost, book, figures);
    CHECK(says(shown(ingredients, "colour", "ingredient"), "*"));
    CHECK(!ingredients.remark.empty());
    CHECK(shown(ingredients, "colour", "cost") == "6.00");
    CHECK(shown(ingredients, "flour", "cost") == "3.98");
    // an eighth of 9.98 is kept: 1.2475
    CHECK(shown(ingredients, "kept dough", "cost") == "-1.25");
    CHECK(shown(ingredients, "total", "cost") == "8.73"); // 8.7325
    CHECK(what_does_not_add_up(ingredients, "USD").empty());
}
