#include <groat/plan/costed_and_paid.hpp>
#include <groat/price/quote.hpp>

#include "random_book.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// Ten loaves of 600 g flour at 1.20 a kilogram.
Book bakery() {
    Book book = a_book();
    food(book, "flour", "10 kg", "12.00");
    formula(book, "loaf", {{"flour", "600 g"}}).makes = quantity("1");
    book.shop.price = at_margin("40 %");
    wants(order(book), "loaf", 10);
    return book;
}

StockItem& in_stock(Book& book, std::string_view item, std::string_view amount) {
    StockItem lot;
    lot.item = named(item);
    lot.amount = quantity(amount);
    book.stock.items.push_back(std::move(lot));
    return book.stock.items.back();
}

CostedAndPaid way_of(Book& book) {
    link_well(book);
    Costing const costing(linked(book), today);
    std::vector<Order const*> orders;
    for (Order const& each : book.orders) orders.push_back(&each);
    Diagnostics found;
    auto const buying = buy(costing, orders, found);
    REQUIRE_MESSAGE(buying.has_value(), in_words(found));
    auto const way = costed_and_paid(costing, *buying);
    REQUIRE(way);
    Money sum = way->costed;
    for (CostStep const& step : way->steps) sum += step.amount;
    CHECK(sum == way->paid);
    CHECK(way->paid == buying->total);
    return *way;
}

/// 0 where there is no such step.
Money step(CostedAndPaid const& way, CostStep::Kind kind) {
    for (CostStep const& each : way.steps)
        if (each.kind == kind) return each.amount;
    return money("0.00");
}

} // namespace

using Kind = CostStep::Kind;

TEST_CASE("a pack beyond need and its delivery are paid for but not costed") {
    Book book = bakery();
    book.suppliers[0].delivery = money("4.00");
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.20")); // 6 kg
    CHECK(step(way, Kind::left_over) == money("4.80"));
    CHECK(step(way, Kind::delivery) == money("4.00"));
    CHECK(way.paid == money("16.00"));
    CHECK(way.steps.size() == 2);
}

TEST_CASE(
    "what stands on the shelf is costed but not paid again, and the corner's price is another") {
    Book book = bakery();
    book.suppliers[0].delivery = money("4.00");
    offer(book, "flour", "5 kg", "6.50", "the corner");
    in_stock(book, "flour", "1 kg");
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.20"));
    CHECK(step(way, Kind::shelf) == money("-1.20"));
    CHECK(step(way, Kind::offers) == money("0.50")); // 5 kg at 1.30 instead of 1.20
    CHECK(way.paid == money("6.50"));
}

TEST_CASE("a deposit is paid for, and is a step of its own") {
    Book book = bakery();
    book.offers.front().deposit = money("0.50");
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.20"));
    CHECK(step(way, Kind::deposit) == money("0.50"));
}

TEST_CASE("what the costs carry of a delivery is taken off what it really is") {
    Book book = bakery();
    book.suppliers[0].delivery = money("6.00");
    book.suppliers[0].usual_order = money("60.00"); // a tenth on all prices
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.92"));
    CHECK(step(way, Kind::delivery) == money("5.28")); // 6.00 less a tenth of 7.20
    CHECK(step(way, Kind::left_over) == money("4.80"));
    CHECK(way.paid == money("18.00"));
}

TEST_CASE("quotes go by the prices of their day, buying by those of its own") {
    Book book = bakery();
    book.offers.front().from = day("2026-09-01");
    offer(book, "flour", "10 kg", "15.00").from = day("2026-11-20");
    book.orders.front().date = day("2026-11-02");
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.20"));
    CHECK(step(way, Kind::prices) == money("1.80")); // 6 kg dearer by 0.30
    CHECK(step(way, Kind::left_over) == money("6.00"));
    CHECK(way.paid == money("15.00"));
}

TEST_CASE("a pot is cooked whole and costed by what is taken of it") {
    Book book = bakery();
    food(book, "plum", "1 kg", "3.00");
    Formula& jam = formula(book, "jam", {{"plum", "1 kg"}});
    jam.batch_step = 1;
    jam.keeps_leftover = true;
    book.formulas.front().lines.push_back(line({"jam", "20 g"}));
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.80"));            // 200 g of jam for 0.60
    CHECK(step(way, Kind::kept) == money("2.40")); // the other 800 g
    CHECK(way.paid == money("15.00"));
}

TEST_CASE("own goods are costed like any, but nothing is bought for them") {
    Book book = bakery();
    in_stock(book, "loaf", "4");
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("7.20"));
    CHECK(step(way, Kind::own_goods) == money("-2.88")); // 4 * 600 g * 1.20
    CHECK(step(way, Kind::left_over) == money("7.68"));  // 10 kg less 3.6 kg
}

TEST_CASE("orders made together share a batch that each was costed with alone") {
    Book book = bakery();
    book.formulas.front().makes = quantity("4"); // 150 g of flour a loaf
    book.formulas.front().batch_step = 1;
    wants(order(book, "B"), "loaf", 5);
    // apart 3 batches and 2 of 0.72 each, together 4
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("3.60"));
    CHECK(step(way, Kind::together) == money("-0.72"));
}

TEST_CASE("an order costed with others is paid for by itself, and that is a step") {
    Book book = bakery();
    book.formulas.front().makes = quantity("4"); // 150 g of flour a loaf
    book.formulas.front().batch_step = 1;
    wants(order(book, "B"), "loaf", 5);
    link_well(book);
    Costing const costing(linked(book), today);
    Order const& first = book.orders.front();
    Diagnostics found;
    auto const buying = buy(costing, {&first}, found);
    REQUIRE(buying);
    auto const quoted = quote(costing, first, {&book.orders[1]}, found);
    REQUIRE(quoted);
    // Together 4 batches of 0.72, by themselves 3 and 2: A bears 2.88 * 3 / 5. Bought for it alone are 1.8 kg.
    auto const way = costed_and_paid(costing, *buying, &*quoted);
    REQUIRE(way);
    CHECK(way->costed == money("1.728"));
    CHECK(step(*way, Kind::run) == money("0.432"));
    CHECK(step(*way, Kind::kept) == money("0.00"));
    CHECK(step(*way, Kind::left_over) == money("9.84")); // 8.2 kg
    CHECK(way->paid == money("12.00"));
}

TEST_CASE("a quote at hand is what it was costed at, whatever the day of its order") {
    Book book = bakery();
    book.offers.front().from = day("2026-09-01");
    offer(book, "flour", "10 kg", "15.00").from = day("2026-11-20");
    book.orders.front().date = day("2026-11-02");
    link_well(book);
    Costing const costing(linked(book), today);
    Diagnostics found;
    auto const buying = buy(costing, {&book.orders.front()}, found);
    auto const quoted = quote(costing, book.orders.front(), found);
    REQUIRE((buying && quoted));
    auto const way = costed_and_paid(costing, *buying, &*quoted);
    REQUIRE(way);
    CHECK(way->costed == money("9.00")); // 6 kg at the prices of the quote
    CHECK(step(*way, Kind::prices) == money("0.00"));
    CHECK(way->paid == money("15.00"));
}

TEST_CASE("what is metered is costed and on no list") {
    Book book = bakery();
    food(book, "water", "1000 kg", "3.00").is_metered = true;
    book.formulas.front().lines.push_back(line({"water", "400 g"}));
    CHECK(step(way_of(book), Kind::metered) == -money("0.012")); // 4 kg
}

TEST_CASE("a bottle charged to its order is bought once") {
    Book book = bakery();
    food(book, "gold", "100 g", "20.00").buys_whole_packs = true;
    book.formulas.front().lines.push_back(line({"gold", "1 g"}));
    CostedAndPaid const way = way_of(book);
    CHECK(way.costed == money("27.20"));                    // 10 g, and the whole bottle
    CHECK(step(way, Kind::whole_packs) == money("-18.00")); // beyond the 10 g
    CHECK(step(way, Kind::left_over) == money("22.80"));    // 18.00 of gold, 4.80 of flour
}

TEST_CASE("whatever the books are, the steps add up to what is paid") {
    int compared = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        CAPTURE(seed);
        Book book = random_book(seed);
        if (book.orders.empty()) continue;
        for (std::size_t i = 0; i < book.ingredients.size(); i += 3)
            if (book.ingredients[i].is_supply()) in_stock(book, book.ingredients[i].name, "3");
        if (!book.formulas.empty() && book.formulas.back().makes_pieces())
            in_stock(book, book.formulas.back().name, "7");
        link_well(book);
        Costing const costing(linked(book), today);
        std::vector<Order const*> orders;
        for (Order const& each : book.orders) orders.push_back(&each);
        Diagnostics found;
        auto const buying = buy(costing, orders, found, 100'000);
        if (!buying) continue;
        auto const way = costed_and_paid(costing, *buying);
        if (!way) continue;
        Money sum = way->costed;
        for (CostStep const& each : way->steps) sum += each.amount;
        CHECK(sum == buying->total);
        ++compared;
    }
    MESSAGE(compared << " random books compared");
    CHECK(compared > 20);
}
