#include "books.hpp"

#include <groat/cost/breakdown.hpp>

using namespace groat;
using namespace groat::test;

namespace {

CostByCategory some_cost() {
    CostByCategory cost;
    cost[Category::ingredients] = money("4.00");
    cost[Category::consumables] = money("0.10");
    cost[Category::packaging] = money("0.60");
    cost[Category::labour] = money("2.40");
    cost[Category::energy] = money("0.30");
    cost[Category::overhead] = money("1.20");
    cost[Category::delivery] = money("0.40");
    return cost;
}

} // namespace

TEST_CASE("the categories add up to the whole") {
    CHECK(some_cost().total() == money("9.00"));
    CHECK(CostByCategory{}.total().is_zero());
}

TEST_CASE("prime cost is ingredients and labour") {
    // Controlling Costs in Foodservice (Goodheart-Willcox 2014) p. 36 exercise 13: food 4.00, labour 2.00,
    // on-cost 20 %: prime cost 4.00 + 2.40 = 6.40
    CHECK(some_cost().prime() == money("6.40"));
}

TEST_CASE("all but overhead is variable, unless the books say otherwise") {
    Shop shop;
    CHECK(some_cost().variable(shop) == money("7.80"));
    shop.is_variable[static_cast<std::size_t>(Category::labour)] = false;
    CHECK(some_cost().variable(shop) == money("5.40"));
}

TEST_CASE("of overhead, the lines that are variable count, whatever the category is") {
    Shop shop;
    CostByCategory cost = some_cost();
    cost.variable_overhead = money("0.50");
    CHECK(cost.variable(shop) == money("8.30"));
    shop.is_variable[static_cast<std::size_t>(Category::overhead)] = true;
    CHECK(cost.variable(shop) == money("8.30")); // the lines have said so already
    CHECK((cost * 2).variable(shop) == money("16.60"));
    cost += some_cost();
    CHECK(cost.variable_overhead == money("0.50"));
}

TEST_CASE("costs are added category by category") {
    CostByCategory twice = some_cost();
    twice += some_cost();
    CHECK(twice[Category::packaging] == money("1.20"));
    CHECK(twice.total() == money("18.00"));
}

TEST_CASE("the parts of the yield loss add up to the ingredient cost") {
    YieldLoss const loss{money("3.00"), money("0.50"), money("0.30"), money("0.20")};
    CHECK(loss.total() == money("4.00"));
}
