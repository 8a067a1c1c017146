#include "books.hpp"

#include <groat/price/compare.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Comparison compared(Book& book, std::string_view name, std::optional<Number> wanted = {}) {
    link_well(book);
    return compare_offers(book, ingredient_index(book, name), today, wanted).value();
}

/// Plums whole at 22 lb for 33.00, of which 88 % is usable, and stoned ones at 30 lb for 52.20.
Book plums() {
    Book book = a_book();
    food(book, "plum");
    offer(book, "plum", "30 lb", "52.20", "the wholesaler");
    offer(book, "plum", "22 lb", "33.00", "the farm").yield = share_of<Yield>("88 %");
    return book;
}

Number const pound = number("453.59237");

} // namespace

TEST_CASE("the offer that is cheapest per usable gram stands first, not the cheapest sack") {
    Book book = plums();
    Comparison const plum = compared(book, "plum");
    REQUIRE(plum.offers.size() == 2);
    // 33.00 / 22 lb = 1.50 a pound, over 88 % = 1.704545...; 52.20 / 30 lb = 1.74
    CHECK(plum.offers[0].usable * pound == money("1.50") / percent("88 %"));
    CHECK(plum.offers[1].usable * pound == money("1.74"));
    CHECK(plum.offers[0].dearer.is_zero());
    // 1.74 / (1.50 / 0.88) - 1 = 0.0208
    CHECK(plum.offers[1].dearer == number("0.0208"));
}

TEST_CASE("a dearer offer draws level at the yield that makes its usable price the best one") {
    Book book = plums();
    Comparison const plum = compared(book, "plum");
    ComparedOffer const& dearer = plum.offers[1];
    CHECK(dearer.break_even_yield == number("1.0208"));
    CHECK(dearer.unit_cost / dearer.break_even_yield == plum.offers[0].usable);
}

TEST_CASE("apples at a yield of three quarters cost a third more than they seem to") {
    // VCC Learning Centre, "Culinary Math: Recipe Costing": 10 lb apples 5.60, yield 75 % -> cost factor
    // 1.333; its EP cost of 7.465 for the 10 lb uses the rounded factor, exact is 112/15 = 7.4666...
    Book book = a_book();
    food(book, "apple", "10 lb", "5.60").yield = share_of<Yield>("75 %");
    ComparedOffer const apple = compared(book, "apple").offers.front();
    CHECK(apple.usable * (10 * pound) == money("112/15"));
}

TEST_CASE("peppers by the ounce") {
    // Open textbook "Bakery and Business Math", ch. 25 (answer not printed): 3 oz at 1.67 a pound, 71 %
    // -> 501/1136
    Book book = a_book();
    food(book, "pepper", "1 lb", "1.67").yield = share_of<Yield>("71 %");
    CHECK(compared(book, "pepper").offers.front().usable * (3 * pound / 16) == money("501/1136"));
}

TEST_CASE(
    "an amount is bought in whole packs, at the price break they reach, with freight and delivery") {
    Book book = a_book();
    food(book, "flour");
    Offer& sack = offer(book, "flour", "10 kg", "10.00", "the mill");
    sack.freight = money("0.50");
    sack.breaks = {{3, money("9.00")}};
    link_well(book);
    book.suppliers[0].delivery = money("5.00");
    book.suppliers[0].minimum_order = money("30.00");
    // 25 kg: three sacks at 9.00 and 0.50 freight each, and 5.00; the goods' 27.00 are below the minimum
    ComparedOffer const flour = compared(book, "flour", number("25000")).offers.front();
    CHECK(flour.packs == 3);
    CHECK(flour.goods == money("28.50"));
    CHECK(flour.landed() == money("33.50"));
    CHECK(flour.is_below_minimum);
    CHECK(flour.freight * number("10000") == money("0.50"));
    CHECK(flour.price * number("10000") == money("10.00"));
}

TEST_CASE("the packs for an amount follow from its yield") {
    // 20 kg usable at 45 %: 44.44 kg to buy, five packs of 10 kg
    Book book = a_book();
    food(book, "lemon", "10 kg", "20.00").yield = share_of<Yield>("45 %");
    CHECK(compared(book, "lemon", number("20000")).offers.front().packs == 5);
}

TEST_CASE("what a dearer offer costs more is told for the amount") {
    Book book = plums();
    Comparison const plum = compared(book, "plum", 100 * pound);
    // 100 lb usable: 174.00 against 150.00 / 0.88
    CHECK(plum.offers[1].extra == money("174.00") - money("150.00") / percent("88 %"));
    CHECK(plum.offers[0].extra.is_zero());
}

TEST_CASE("an old price is marked where the shop says what is old") {
    Book book = plums();
    book.offers[0].from = day("2026-01-05");
    book.offers[1].from = day("2026-11-20");
    book.shop.stale_after = Days(60);
    Comparison const plum = compared(book, "plum");
    CHECK(!plum.offers[0].is_stale);
    CHECK(plum.offers[0].age == Days(5));
    CHECK(plum.offers[1].is_stale);
}

TEST_CASE("only offers in force are compared, and all of them stand in the history") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 kg", "8.00").from = day("2026-10-01");
    offer(book, "butter", "1 kg", "9.00").from = day("2026-11-01");
    offer(book, "butter", "1 kg", "9.50").from = day("2027-01-01");
    Comparison const butter = compared(book, "butter");
    REQUIRE(butter.offers.size() == 1);
    CHECK(butter.offers.front().usable * 1000 == money("9.00"));
    auto const history = price_history(book, ingredient_index(book, "butter")).value();
    REQUIRE(history.size() == 3);
    CHECK(history.front().usable * 1000 == money("8.00"));
    CHECK(history.back().from == day("2027-01-01"));
}

TEST_CASE("what was paid stands beside what is listed, of the same supplier and pack") {
    Book book = a_book();
    food(book, "butter");
    offer(book, "butter", "1 kg", "9.00", "the mill").from = day("2026-11-01");
    offer(book, "butter", "5 kg", "40.00", "the mill");
    offer(book, "butter", "1 kg", "8.50", "the dock").from = day("2026-11-01");
    receipt(book, "2026-10-20", "butter", "1 kg", 2, "17.00", "the mill");
    receipt(book, "2026-11-10", "butter", "1 kg", 2, "16.40", "the dock");
    receipt(book, "2026-11-12", "butter", "500 g", 1, "7.00", "the shop").is_stopgap = true;
    Comparison const butter = compared(book, "butter");
    REQUIRE(butter.offers.size() == 3);
    CHECK(butter.offers[0].usable * 1000 == money("8.00")); // 5 kg, never bought
    CHECK_FALSE(butter.offers[0].paid);
    CHECK(butter.offers[1].usable * 1000 == money("8.20")); // paid at the dock, since the list
    CHECK(*butter.offers[1].listed * 1000 == money("8.50"));
    CHECK(butter.offers[1].paid->price * 1000 == money("8.20"));
    CHECK(butter.offers[1].paid->on == day("2026-11-10"));
    CHECK(butter.offers[2].usable * 1000 ==
          money("9.00")); // the mill's list is newer than what was paid
    CHECK(butter.offers[2].paid->price * 1000 == money("8.50"));
    auto const history = price_history(book, ingredient_index(book, "butter")).value();
    REQUIRE(history.size() == 6);
    CHECK(book.offers[history.back().offer].kind == Offer::Kind::stopgap);
}

TEST_CASE("as purchased is landed: with freight and the share of a usual order, without deposit") {
    Book book = a_book();
    food(book, "flour", "1 kg", "16.00");
    book.offers[0].freight = money("0.50");
    book.offers[0].deposit = money("2.00");
    link_well(book);
    book.suppliers[0].delivery = money("7.50");
    book.suppliers[0].usual_order = money("120.00");
    ComparedOffer const flour = compared(book, "flour", number("10000")).offers.front();
    CHECK(flour.unit_cost * 1000 == money("17.50")); // 16.00 and a sixteenth, and 0.50
    CHECK(flour.price * 1000 == money("16.00"));
    CHECK(flour.freight * 1000 == money("1.50"));
    CHECK(flour.goods == money("185.00")); // 10 packs with freight and deposit
    CHECK(flour.delivery == money("7.50"));
    book.suppliers[0].free_delivery_from = money("160.00");
    CHECK(compared(book, "flour", number("10000")).offers.front().delivery.is_zero());
}

TEST_CASE("an ingredient that nobody offers is said to have no price") {
    Book book = a_book();
    food(book, "saffron");
    link_well(book);
    auto const nothing = compare_offers(book, ingredient_index(book, "saffron"), today, {});
    REQUIRE(!nothing);
    CHECK(nothing.error().code == "missing-price");
}
