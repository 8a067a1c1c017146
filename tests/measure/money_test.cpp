#include "amounts.hpp"

#include <stdexcept>

using groat::Money;
using groat::Number;

TEST_CASE("money is added up exactly, however small its parts") {
    // a pinch of salt: 0.0004 EUR in each of 2,500 pieces is a euro
    Money sum;
    for (int i = 0; i < 2'500; ++i) sum += money("0.0004", "EUR");
    CHECK(sum == money("1", "EUR"));
    CHECK(money("10", "EUR") / 3 * 3 == money("10", "EUR"));
}

TEST_CASE("prices of the textbooks come out to the cent, and exactly where they print it so") {
    // OpenStax Contemporary Mathematics m00058, in USD: cost x (1 + markup), price / (1 + markup)
    CHECK(money("62.00", "USD") * figure("1.15") == money("71.30", "USD"));
    CHECK(money("750", "USD") * figure("1.45") == money("1087.50", "USD"));
    CHECK(money("10.62", "USD") / figure("1.20") == money("8.85", "USD"));
    CHECK(money("1.30", "USD") * figure("1.60") == money("2.08", "USD"));
    CHECK(money("29.50", "USD") / figure("1.18") == money("25.00", "USD"));
    // 26.55 at a markup of 125 % cost 11.80; its printed steps add 1 to 2.25, which would give 8.17
    CHECK(money("26.55", "USD") / figure("2.25") == money("11.80", "USD"));
    // 467.64 holds 8.25 % tax: 432.00 and 35.64
    CHECK(money("467.64", "USD") / figure("1.0825") == money("432.00", "USD"));
    // VCC Learning Centre: 20 lb of flour for 10.50 are 0.525 a pound
    CHECK(money("10.50", "CAD") / 20 == money("0.525", "CAD"));
}

TEST_CASE("a cost per portion keeps its fraction until it is priced") {
    // openwa.pressbooks.pub/bakeryandbusinessmath, ch. 11: 173.89 for 200 portions at a food cost of 25 %
    Money const portion = money("173.89", "USD") / 200;
    CHECK(portion == money("0.86945", "USD"));
    CHECK(portion / figure("0.25") == money("3.4778", "USD"));
}

TEST_CASE("energy billed to five decimals of a cent is exact") {
    // EN 16931 sample invoice ubl-tc434-example8.xml, in EUR
    CHECK(money("0.00880", "EUR") * 16'000 == money("140.80", "EUR"));
    CHECK(16'000 * money("0.00101", "EUR") == money("16.16", "EUR"));
    CHECK(132 * money("15.24", "EUR") / 12 == money("167.64", "EUR"));
}

TEST_CASE("money divided by money is a share without a currency") {
    // OpenStax m00058: a markup of 4.70 on 5.20 is 90.38 %; of the price of 9.90 it is 47.47 %
    Money const profit = money("9.90", "USD") - money("5.20", "USD");
    CHECK(profit / money("5.20", "USD") == Number(47) / 52);
    CHECK(profit / money("9.90", "USD") == Number(47) / 99);
    CHECK_THROWS_AS((void)(profit / money("0", "USD")), std::logic_error);
    CHECK_THROWS_AS((void)(profit / 0), std::logic_error);
}

TEST_CASE("amounts of two currencies never meet in one sum") {
    Money const euros = money("1", "EUR");
    Money const dollars = money("1", "USD");
    CHECK_THROWS_AS((void)(euros + dollars), std::logic_error);
    CHECK_THROWS_AS((void)(euros - dollars), std::logic_error);
    CHECK_THROWS_AS((void)(euros == dollars), std::logic_error);
    CHECK_THROWS_AS((void)(euros < dollars), std::logic_error);
    CHECK_THROWS_AS((void)(euros / dollars), std::logic_error);
}

TEST_CASE("the empty sum is the zero of every currency and takes that of what comes first") {
    Money sum;
    CHECK(sum.is_zero());
    CHECK(sum.currency().is_none());
    CHECK(sum == money("0", "JPY"));
    sum += money("2", "EUR");
    CHECK(sum.currency() == currency("EUR"));
    CHECK_THROWS_AS(sum += money("1", "USD"), std::logic_error);
    CHECK(sum == money("2", "EUR")); // a refused sum leaves the amount as it was
    Money owed;
    owed -= money("2", "EUR");
    CHECK(owed == money("-2", "EUR"));
    CHECK((Money() + money("1", "EUR")).currency() == currency("EUR"));
}

TEST_CASE("a discount is a negative amount and compares as one") {
    Money const discount = -money("1.50", "EUR");
    CHECK(discount.is_negative());
    CHECK(discount < Money());
    CHECK(discount < money("1", "EUR"));
    CHECK(money("2", "EUR") + discount == money("0.50", "EUR"));
    CHECK(-discount == money("1.5", "EUR"));
}

TEST_CASE("a batch divided into pieces and put together again costs what it cost") {
    Draw draw(11);
    for (int i = 0; i < 1'000; ++i) {
        Money const batch(draw.number(0, 10'000), currency("EUR"));
        Number const pieces = draw.whole(1, 400);
        CHECK(batch / pieces * pieces == batch);
        Number const sold = draw.number(0, 1);
        CHECK(batch * sold + batch * (1 - sold) == batch);
    }
}
