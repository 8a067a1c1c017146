#include <groat/plan/basket.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

TEST_CASE("a deposit is paid with a basket, and is in no line's cost") {
    PackLine line;
    line.packs = 2;
    line.goods = money("18.00");
    line.freight = money("3.00");
    line.deposit = money("1.00");
    CHECK(line.cost() == money("21.00"));
    Basket const basket{
        0, {line}, money("18.00"), line.goods, line.freight, line.deposit, money("4.00")};
    CHECK(basket.total() == money("26.00"));
}
