#include <groat/price/break_even.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

UnitSale unit(std::string_view price, std::string_view variable) {
    return {money(price) - money(variable), money(price)};
}

BreakEven enough(std::string_view fixed, UnitSale const& each, Money const& profit = {}) {
    auto const result = break_even(money(fixed), each, profit);
    REQUIRE(result.has_value());
    return *result;
}

} // namespace

TEST_CASE("what a sale leaves over its variable cost") {
    // OpenStax, Managerial Accounting, m68115: price 100, variable cost 20 -> 80, 80 %; 500 units leave 40,000
    // (so its figure; the sentence beside it says 36,000, which is a misprint)
    UnitSale const each = unit("100", "20");
    CHECK(each.contribution == money("80"));
    CHECK(each.ratio() == percent("80 %"));
    CHECK(each.contribution * 500 == money("40000"));
}

TEST_CASE("a kiosk with a rent, at a hundred and at two hundred sales") {
    // Same module: price 25, cost 15 + 0.50, fixed 700 -> 9.50 each; 250 and 1,200 are left
    UnitSale const each = unit("25", "15.50");
    CHECK(each.contribution == money("9.50"));
    CHECK(each.contribution * 100 - money("700") == money("250"));
    CHECK(each.contribution * 200 - money("700") == money("1200"));
    // by hand: 700 / 9.50 = 73.68, so 74 sales are enough and 73 are not
    BreakEven const even = enough("700", each);
    CHECK(even.units == number("1400/19"));
    CHECK(even.whole_units == 74);
}

TEST_CASE("units and sales to break even") {
    // OpenStax, Managerial Accounting, m68116: fixed 18,000, contribution 80 of 100 -> 225 units, 22,500
    BreakEven const even = enough("18000", unit("100", "20"));
    CHECK(even.units == 225);
    CHECK(even.whole_units == 225);
    CHECK(even.sales == money("22500"));
}

TEST_CASE("the margin of safety is the part of sales above break-even") {
    // 500 sold at 100 against the 225 above (DERIVED from m68115 and m68116): 275 of 500
    BreakEven const even = enough("18000", unit("100", "20"));
    CHECK(margin_of_safety(money("50000"), even) == percent("55 %"));
    CHECK(margin_of_safety(money("18000"), even) == percent("-25 %"));
    CHECK_FALSE(margin_of_safety(money("0"), even));
}

TEST_CASE("units and sales for a profit, before and after tax on it") {
    // Same module: profit 16,000 -> 425 units, 42,500
    BreakEven const before = enough("18000", unit("100", "20"), money("16000"));
    CHECK(before.units == 425);
    CHECK(before.sales == money("42500"));
    // 24,000 after a tax of 40 % are 40,000 before it -> 725 units, 72,500
    auto const wanted = before_tax(money("24000"), share_of<Share>("40 %"));
    CHECK(wanted.value() == money("40000"));
    BreakEven const after = enough("18000", unit("100", "20"), *wanted);
    CHECK(after.units == 725);
    CHECK(after.sales == money("72500"));
}

TEST_CASE("break-even of a mix, and how many of each") {
    // OpenStax, Managerial Accounting, m68119: 5 : 3 : 2 at 6.25, 7.75 and 9.25 with variable costs of 3.25,
    // 4.50 and 6.25 -> 73.00, 42.25, 30.75 a set; fixed 145,000 -> 4,715.45 sets, 4,716; of each
    // 23,577, 14,146 and 9,431
    UnitSale const set = composite(
        {{5, unit("6.25", "3.25")}, {3, unit("7.75", "4.50")}, {2, unit("9.25", "6.25")}});
    CHECK(set.sales == money("73.00"));
    CHECK(set.sales - set.contribution == money("42.25"));
    CHECK(set.contribution == money("30.75"));
    BreakEven const even = enough("145000", set);
    CHECK(even.units == number("580000/123"));
    CHECK(printed(even.units, 2) == "4715.45");
    CHECK(even.whole_units == 4716);
    CHECK(printed(even.units * 5, 0) == "23577");
    CHECK(printed(even.units * 3, 0) == "14146");
    CHECK(printed(even.units * 2, 0) == "9431");
}

TEST_CASE("at break-even, and at the units for a profit, just that profit is left") {
    Money const fixed = money("1234.56");
    for (std::string_view const profit : {"0", "0.01", "333", "99999"}) {
        UnitSale const each = unit("7.35", "2.19");
        BreakEven const even = enough("1234.56", each, money(profit));
        CHECK(each.contribution * even.units - fixed == money(profit));
        CHECK(each.sales * even.units == even.sales);
        Number const short_by = Number(even.whole_units) - even.units;
        CHECK(!short_by.is_negative());
        CHECK(short_by < 1);
    }
}

TEST_CASE("nothing to pay for is even before the first sale") {
    CHECK(enough("0", unit("2", "1")).units.is_zero());
    CHECK(enough("0", unit("2", "1")).whole_units == 0);
}

TEST_CASE("where a sale leaves nothing, no number of sales is enough") {
    for (std::string_view const variable : {"2", "3"}) {
        auto const result = break_even(money("10"), unit("2", variable));
        REQUIRE(!result.has_value());
        CHECK(result.error().code == "no-break-even");
    }
}

TEST_CASE("a tax that takes all of a profit leaves none to want") {
    auto const result = before_tax(money("10"), share_of<Share>("100 %"));
    REQUIRE(!result.has_value());
    CHECK(result.error().code == "target-out-of-reach");
    CHECK(unit("0", "0").ratio() == std::nullopt);
}
