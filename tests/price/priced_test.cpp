#include <groat/price/priced.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// 2.00 net, 0.50 of it ingredients, tax 10 %, no fee.
Priced of_two() {
    Priced priced;
    priced.burden = {money("2.00"),
                     money("0.50"),
                     money("1.25"),
                     money("0.75"),
                     {},
                     *TaxRate::of(number("0.1"))};
    priced.burden.fee.fixed = money("0.00");
    return priced;
}

} // namespace

TEST_CASE("a price that contains tax earns by what is left without it") {
    Priced priced = of_two();
    priced.ask(coins("3.30"), true);
    CHECK(priced.price == coins("3.30"));
    CHECK(priced.net_price == money("3.00"));
    CHECK(priced.earned.profit == money("1.00"));
    CHECK(priced.earned.food_cost == Number(1) / 6);
    CHECK_FALSE(priced.loses());
}

TEST_CASE("a price without tax is what it earns by") {
    Priced priced = of_two();
    priced.ask(coins("3.30"), false);
    CHECK(priced.net_price == money("3.30"));
    CHECK(priced.earned.contribution == money("2.55"));
}

TEST_CASE("a price asked anew leaves nothing of the one before") {
    Priced priced = of_two();
    priced.ask(coins("3.30"), true);
    priced.ask(coins("1.10"), true);
    CHECK(priced.net_price == money("1.00"));
    CHECK(priced.earned.profit == money("-1.00"));
    CHECK(priced.loses());
}

TEST_CASE("what a net price earns is what the price asked earns") {
    Priced priced = of_two();
    priced.ask(coins("3.30"), true);
    Earning const same = earning(money("3.00"), priced.burden);
    CHECK(same.net_price == priced.net_price);
    CHECK(same.earned.profit == priced.earned.profit);
    CHECK(same.earned.margin == priced.earned.margin);
}
