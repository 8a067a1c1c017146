#include <groat/sheets/shown_costs.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

/// The first categories at these amounts, in the order of the enumeration; the others cost nothing.
CostByCategory costing(std::vector<std::string> const& amounts) {
    CostByCategory cost;
    for (std::size_t i = 0; i < amounts.size(); ++i) cost.amounts[i] = money(amounts[i]);
    return cost;
}

std::string in_words(std::vector<ShownCategory> const& categories) {
    std::string words;
    for (ShownCategory const& each : categories)
        words += fmt::format("{} {} ", each.key(), decimal(each.cost.shown, 2));
    return words;
}

Number const cent = Number(1) / 100;

} // namespace

TEST_CASE(
    "categories as printed add up to the total that is printed, and what costs nothing is left out") {
    auto const shown =
        shown_categories(costing({"1.004", "0", "0", "2.004", "3.004"}), 1, cent, number("6.01"));
    REQUIRE(shown.size() == 3);
    Number sum;
    Number exact;
    for (ShownCategory const& each : shown) {
        sum += each.cost.shown;
        exact += each.cost.exact;
    }
    CHECK(sum == number("6.01"));
    CHECK(exact == number("6.012"));
    CHECK(shown[1].category == Category::labour);
}

TEST_CASE("consumables and packaging as printed have their sum as it is printed") {
    // 0.333 and 0.333 are 0.666, which is 0.67 beside 1.334: neither alone would be
    auto const shown = shown_categories(costing({"1.334", "0.333", "0.333"}), 1, cent, 2);
    CHECK(in_words(shown) == "ingredients 1.33 consumables 0.34 packaging 0.33 ");
}

TEST_CASE("a cost is shown over a divisor, exactly so") {
    auto const shown = shown_categories(costing({"1.00"}), 3, cent, number("0.33"));
    REQUIRE(shown.size() == 1);
    CHECK(shown[0].cost.exact == Number(1) / 3);
    CHECK(shown[0].cost.shown == number("0.33"));
}

TEST_CASE("what a category that is not there costs is nothing") {
    ShownCosts costs;
    costs.categories = {{Category::labour, {number("1.004"), 1}}};
    CHECK(costs.of(Category::labour).exact == number("1.004"));
    CHECK(costs.of(Category::delivery).exact.is_zero());
    CHECK(costs.supplies().shown.is_zero());
}
