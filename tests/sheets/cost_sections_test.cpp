#include "sheets.hpp"

#include <groat/sheets/cost_sections.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/shape_cost.hpp>
#include <groat/sheets/shape_quote.hpp>

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
    Table const makeup =
        price_makeup<sheet_shapes::maker_quote::line_costs>(boxes(), shop, "The line");
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
    Table const makeup = price_makeup<sheet_shapes::cost::costs>(line, shop, "the run");
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
    for (Column const& column :
         price_makeup<sheet_shapes::cost::costs>(line, shop, "the line").columns)
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
    Costing const costing(linked(book), today);
    OrderCost const cost = costing.cost({{sale(book, "shell", 40)}, Wholes::all, {}});
    Table const bought = purchase_table(cost, book, figures);
    CHECK(shown(bought, "flour", "offer") ==
          "the mill, 25 lb at 13.80 since 2026-10-01 (cheapest of 2)");
    CHECK(shown(bought, "butter", "offer") == "the mill, 1 lb at 4.20 (preferred)");
    CHECK(shown(bought, "flour", "packs") == "1");
    CHECK(shown(bought, "total", "outlay") == "18.00");
}

TEST_CASE(
    "the record says what was last bought, in which pack, instead of whom, and whose delivery is in no cost") {
    Book book = a_book();
    for (char const* name : {"flour", "butter", "sugar", "honey"}) {
        food(book, name);
        offer(book, name, "1 kg", "2.00", "the mill");
    }
    offer(book, "butter", "1 kg", "9.00", "the dock").from = day("2026-11-20");
    receipt(book, "2026-11-10", "flour", "1 kg", 2, "3.00", "the mill");
    receipt(book, "2026-11-10", "butter", "1 kg", 1, "8.00", "the dock");
    receipt(book, "2026-11-10", "sugar", "2 kg", 1, "5.00", "the dock");
    Offer& special = offer(book, "sugar", "2 kg", "4.00", "the dock");
    special.from = day("2026-11-11");
    special.until = day("2026-11-12");
    offer(book, "sugar", "5 kg", "12.00", "the dock");
    book.ingredients[3].preferred_supplier = named("the dock");
    formula(book, "bun", {{"flour", "1 g"}, {"butter", "1 g"}, {"sugar", "1 g"}, {"honey", "1 g"}})
        .makes = quantity("1");
    book.suppliers[0].delivery = money("7.50");
    book.suppliers[1].delivery = money("9.00");
    book.suppliers[1].usual_order = money("90.00");
    link_well(book);
    Costing const costing(linked(book), today);
    OrderCost const cost = costing.cost({{sale(book, "bun", 1)}, Wholes::all, {}});
    Table const bought = purchase_table(cost, book, figures);
    CHECK(shown(bought, "flour", "offer") ==
          "the mill, 1 kg at 1.50 paid on 2026-11-10 (last bought)");
    CHECK(shown(bought, "butter", "offer") ==
          "the dock, 1 kg at 9.90 with delivery, since 2026-11-20 (last bought on 2026-11-10)");
    CHECK(shown(bought, "sugar", "offer") ==
          "the dock, 5 kg at 13.20 with delivery (last bought on 2026-11-10 as 2 kg)");
    CHECK(shown(bought, "honey", "offer") == "the mill, 1 kg at 2.00 (instead of the dock)");
    CHECK(bought.remark ==
          "In no cost: the delivery of the mill (7.50). Their terms state no 'usual order'.");
    CHECK(shown(bought, "total", "outlay") == "24.50"); // 1.50 + 9.00 + 12.00 + 2.00
}

TEST_CASE("whole packs are marked, and what is kept stands with the part that is taken of it") {
    // four batches of dough: 4 kg of flour less 20 g, and 20 g of a 100 g bottle at 6.00, which is paid whole
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    food(book, "colour", "100 g", "6.00").buys_whole_packs = true;
    Formula& dough = formula(book, "dough", {{"flour", "995 g"}, {"colour", "5 g"}});
    dough.batch_step = 1;
    formula(book, "bun", {{"dough", "100 g"}}).makes = quantity("1");
    link_well(book);
    auto const cost = [&] {
        Costing const costing(linked(book), today);
        OrderCost const order = costing.cost({{sale(book, "bun", 35)}, Wholes::all, {}});
        return std::pair(ingredient_table(order, book, figures),
                         formula_table(order, book, costing.formulary()));
    };
    Table const ingredients = cost().first;
    CHECK(says(shown(ingredients, "colour", "ingredient"), "*"));
    CHECK(!ingredients.remark.empty());
    CHECK(shown(ingredients, "colour", "cost") == "6.00");
    CHECK(shown(ingredients, "flour", "cost") == "3.98");
    CHECK(shown(ingredients, "total", "cost") == "9.98");
    CHECK(what_does_not_add_up(ingredients, "USD").empty());
    CHECK(shown(cost().second, "dough", "made") == "4");

    // kept: three and a half batches of what a batch costs, as used
    book.formulas[0].keeps_leftover = true;
    auto const [parts, made] = cost();
    CHECK(!says(shown(parts, "colour", "ingredient"), "*"));
    CHECK(shown(parts, "colour", "cost") == "1.05");
    CHECK(shown(parts, "flour", "cost") == "3.48");
    CHECK(says(shown(made, "dough", "formula"), "*"));
    CHECK(shown(made, "dough", "made").empty());
    CHECK(!made.remark.empty());
}

TEST_CASE(
    "what is left over and charged is told, with what it is of the cost; what is kept is not") {
    // 15 of a batch of 10 by whole batches: half a batch of 1.00 is left over of 2.00
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    Formula& bun = formula(book, "bun", {{"flour", "1 kg"}});
    bun.makes = quantity("10");
    bun.batch_step = 1;
    link_well(book);
    auto const remarks = [&](int count) {
        Costing const costing(linked(book), today);
        return leftover_remarks(costing.cost({{sale(book, "bun", count)}}), costing, figures).lines;
    };
    REQUIRE(remarks(15).size() == 2);
    CHECK(remarks(15)[0] == "Bun: 5 pieces' worth left over, 0.50.");
    CHECK(says(remarks(15)[1], "That is 25 % of the cost."));
    CHECK(remarks(20).empty());
    book.formulas[0].keeps_leftover = true;
    CHECK(remarks(15).empty());
}
