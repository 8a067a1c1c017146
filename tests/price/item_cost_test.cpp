#include "books.hpp"
#include "plain_orders.hpp"
#include "random_book.hpp"

#include <groat/price/item_cost.hpp>

using namespace groat;
using namespace groat::test;

namespace {

ItemCost item(Book& book, std::string_view name, SaleUnit const* unit = nullptr) {
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto result = cost_item(costing, index_of(book, name), unit, found);
    REQUIRE_MESSAGE(result.has_value(), in_words(found));
    return *result;
}

} // namespace

TEST_CASE("two hundred portions of one batch at a food cost of a quarter") {
    // openwa.pressbooks.pub/bakeryandbusinessmath ch. 11: 173.89 / 200 = 0.86945, kept unrounded on purpose;
    // at 25 % 3.4778, price 3.48
    Book book = a_book();
    food(book, "all of it", "1 kg", "173.89");
    formula(book, "stew", {{"all of it", "1 kg"}}).makes = quantity("200");
    book.shop.price = at_food_cost("25 %");
    ItemCost const stew = item(book, "stew");
    CHECK(stew.line.burden.ingredients == money("0.86945"));
    CHECK(stew.line.wanted == money("3.4778"));
    CHECK(stew.line.price == coins("3.48"));
}

TEST_CASE("a pan cut into twenty-four") {
    // "FSM2025 Supplement" ch. 17: 36.00 / 24 = 1.50, at 35 % 4.29
    Book book = a_book();
    food(book, "all of it", "1 kg", "36.00");
    formula(book, "square", {{"all of it", "1 kg"}}).makes = quantity("24");
    book.shop.price = at_food_cost("35 %");
    ItemCost const square = item(book, "square");
    CHECK(square.line.burden.ingredients == money("1.50"));
    CHECK(square.line.price == coins("4.29"));
}

TEST_CASE("an item is costed in its standard run as it is made, without what belongs to orders") {
    // 50 of a batch of 20, by whole batches: three, 3.00 of flour and 30 min at 12.00: 9.00 / 50. The half hour that
    // every order takes is no part of it
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    role(book, "baker", "12.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("20");
    cookie.batch_step = 1;
    cookie.labour.push_back(task("mix", "baker", "10"));
    cookie.labour.push_back(task("lay out", "baker", "5", Per::order));
    book.shop.order_work.push_back(task("invoice", "baker", "30", Per::order));
    cookie.standard_run = 50;
    ItemCost const of_50 = item(book, "cookie");
    CHECK(of_50.run.said == StandardRun::Said::formula);
    CHECK(of_50.line.burden.cost == money("0.18"));
    CHECK(of_50.cost.loss.rounding == money("0.50"));
    CHECK(!of_50.line.has_price); // no policy states a target
    // the shop's run where the formula has none: 60 take three batches as well
    book.formulas[0].standard_run.reset();
    book.shop.standard_run = 60;
    CHECK(item(book, "cookie").line.burden.cost == money("0.15"));
    // where nobody states one, a batch
    book.shop.standard_run.reset();
    ItemCost const batch = item(book, "cookie");
    CHECK(batch.run.said == StandardRun::Said::nobody);
    CHECK(batch.line.count == 20);
    CHECK(batch.line.burden.cost == money("0.15"));
}

TEST_CASE("a run is charged for the colour it uses, not for the bottle") {
    Book book = a_book();
    food(book, "colour", "1 kg", "40.00").buys_whole_packs = true;
    Formula& cookie = formula(book, "cookie", {{"colour", "100 g"}});
    cookie.makes = quantity("40");
    cookie.standard_run = 50;
    CHECK(item(book, "cookie").line.burden.cost == money("0.10"));
}

TEST_CASE("what is done for every sale at the counter is borne by what is sold there") {
    // 2 min at 12.00 for each of the 5 sales in which a run of 20 goes: 2.00 / 20, and as many minutes of overhead
    Book book = a_book();
    food(book, "flour", "1 kg", "0.00");
    role(book, "server", "12.00");
    formula(book, "cookie", {{"flour", "1 kg"}}).makes = quantity("20");
    book.shop.counter_work.push_back(task("serve", "server", "2", Per::order));
    overhead(book, "rent", Overhead::Driver::labour_hour, "6.00");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    quoting_detail::ItemPricer pricer(costing, found);
    quoting_detail::ItemTerms terms;
    CHECK(pricer.item(0, nullptr, terms)->line.burden.cost.is_zero());
    terms.is_at_counter = true;
    terms.items_per_payment = 4;
    CHECK(pricer.item(0, nullptr, terms)->line.burden.cost == money("0.15"));
    terms.items_per_payment.reset(); // all of a run are one sale
    CHECK(pricer.item(0, nullptr, terms)->line.burden.cost == money("0.03"));
}

TEST_CASE("an item is costed as it is first sold, or as is asked for") {
    Book book = a_book();
    food(book, "flour", "1 kg", "1.00");
    supply(book, "box", "1", "0.70");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("10");
    sold_as(cookie, "box of 12", "12").packing.push_back(uses("box", "1", Per::sale_unit));
    sold_as(cookie, "tray of 30", "30");
    ItemCost const box = item(book, "cookie");
    CHECK(box.line.title(book) == "cookie, box of 12");
    CHECK(box.line.burden.cost == money("1.90"));
    CHECK(box.line.pieces == 12); // a batch of ten is no box: one box is made
    ItemCost const tray = item(book, "cookie", &book.formulas[0].sold_as[1]);
    CHECK(tray.line.burden.cost == money("3.00"));
}

TEST_CASE("what is made by mass and not sold by itself is costed by the kilogram") {
    Book book = a_book();
    food(book, "plum", "1 kg", "4.00");
    lose(formula(book, "filling", {{"plum", "1 kg"}}), "cooking", "20 %",
         LossStage::after_portioning);
    ItemCost const filling = item(book, "filling");
    CHECK(filling.line.title(book) == "filling, kilogram");
    CHECK(filling.line.burden.cost == money("5.00"));
}

TEST_CASE("the run of a jam is so much of it, in jars") {
    Book book = a_book();
    food(book, "plum", "1 kg", "4.00");
    Formula& jam = formula(book, "jam", {{"plum", "1 kg"}});
    sold_as(jam, "jar", "250 g");
    jam.standard_run = 10'000; // g
    ItemCost const jar = item(book, "jam");
    CHECK(jar.line.count == 40);
    CHECK(jar.line.pieces == 40);
    CHECK(jar.line.burden.cost == money("1.00"));
}

TEST_CASE("the shop's usual payment is counted, its fixed part spread over the run") {
    // (1.00 + 0.60 / 60 + 2 % of the price): markup 0: 1.01 / 0.98
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    Formula& cookie = formula(book, "cookie", {{"flour", "1 kg"}});
    cookie.makes = quantity("10");
    cookie.standard_run = 60;
    fee(book, "card", "2 %", "0.60");
    book.shop.paid_by = named("card");
    book.shop.price = at_markup("0 %");
    CHECK(item(book, "cookie").line.wanted == money("1.01") / number("0.98"));
}

TEST_CASE("an item that cannot be costed is refused with the reasons") {
    Book book = a_book();
    food(book, "honey");
    formula(book, "cake", {{"honey", "1 kg"}}).makes = quantity("8");
    link_well(book);
    Diagnostics found;
    Costing const costing(linked(book), today);
    CHECK(!cost_item(costing, 0, nullptr, found));
    CHECK(finding(found, "missing-price"));
}

TEST_CASE("a given price below cost is warned of") {
    Book book = a_book();
    food(book, "flour", "1 kg", "10.00");
    formula(book, "cookie", {{"flour", "1 kg"}}).makes = quantity("10");
    book.shop.price = at_price("0.80");
    link_well(book);
    Diagnostics found;
    Costing const costing(linked(book), today);
    REQUIRE(cost_item(costing, 0, nullptr, found));
    auto const warning = finding(found, "below-cost");
    REQUIRE(warning.has_value());
    CHECK(warning->what == "'cookie' at 0.80 loses 0.20 each");
}

TEST_CASE("any item can be costed for a menu, and its parts add up") {
    for_random_books(200, [](Book const& book) {
        Costing const costing(linked(book), today);
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            Diagnostics found;
            auto const item = cost_item(costing, i, nullptr, found);
            REQUIRE_MESSAGE(item.has_value(), in_words(found));
            QuoteLine const& line = item->line;
            REQUIRE(line.cost.total() == item->cost.total.total());
            REQUIRE(line.burden.cost * line.count == line.cost.total());
            REQUIRE(item->cost.loss.total() == line.cost[Category::ingredients]);
            REQUIRE(line.burden.cost + line.earned.fee + line.earned.profit == line.net_price);
        }
    });
}

TEST_CASE(
    "an item costs what an order of just its standard run costs, without what belongs to orders") {
    for_random_books(200, [](Book const& drawn) {
        Book const book = without_what_belongs_to_orders(drawn);
        Costing const costing(linked(drawn), today);
        Costing const plain(linked(book), today);
        for (std::size_t i = 0; i < book.formulas.size(); ++i) {
            Diagnostics found;
            auto const item = cost_item(costing, i, nullptr, found);
            REQUIRE_MESSAGE(item.has_value(), in_words(found));
            Sale sale = item->run.sale;
            if (!book.formulas[i].sold_as.empty()) sale.unit = &book.formulas[i].sold_as.front();
            REQUIRE(sale.count.is_whole());
            OrderCost const order = plain.cost({{sale}});
            for (std::size_t c = 0; c < category_count; ++c)
                REQUIRE(item->cost.total.amounts[c] == order.total.amounts[c]);
        }
    });
}
