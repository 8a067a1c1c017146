#include "books.hpp"
#include "random_book.hpp"

#include <groat/price/price_point.hpp>

using namespace groat;
using namespace groat::test;

namespace {

PricePoint to_step(std::string_view step, bool to_nearest = false) {
    PricePoint point;
    point.step = money(step);
    point.to_nearest = to_nearest;
    return point;
}
PricePoint to_endings(std::initializer_list<std::string_view> endings) {
    PricePoint point;
    for (std::string_view const each : endings) point.endings.push_back(number(each));
    return point;
}

} // namespace

TEST_CASE("a wanted price goes up to the next step, and stays where it is one") {
    CHECK(to_price_point(money("10.31"), to_step("0.25")) == coins("10.50"));
    CHECK(to_price_point(money("10.50"), to_step("0.25")) == coins("10.50"));
    CHECK(to_price_point(money("10.5001"), to_step("0.25")) == coins("10.75"));
    CHECK(to_price_point(money("10.01"), to_step("5")) == coins("15"));
}

TEST_CASE("or to the nearest step, a half going up") {
    CHECK(to_price_point(money("10.37"), to_step("0.25", true)) == coins("10.25"));
    CHECK(to_price_point(money("10.375"), to_step("0.25", true)) == coins("10.50"));
    CHECK(to_price_point(money("10.38"), to_step("0.25", true)) == coins("10.50"));
}

TEST_CASE("or to the least price that ends as the shop likes") {
    CHECK(to_price_point(money("10.31"), to_endings({"0.50", "0.99"})) == coins("10.50"));
    CHECK(to_price_point(money("10.50"), to_endings({"0.99", "0.50"})) == coins("10.50"));
    CHECK(to_price_point(money("10.60"), to_endings({"0.50", "0.99"})) == coins("10.99"));
    CHECK(to_price_point(money("10.991"), to_endings({"0.50", "0.99"})) == coins("11.50"));
    CHECK(to_price_point(money("10.991"), to_endings({"0.00"})) == coins("11.00"));
}

TEST_CASE("without a liking a price goes up to the smallest coin of its currency") {
    CHECK(to_price_point(money("3.4778"), {}) == coins("3.48"));
    CHECK(to_price_point(money("347.1", "JPY"), {}) == coins("348", "JPY"));
    CHECK(to_price_point(money("3.4771", "KWD"), {}) == coins("3.478", "KWD"));
}

TEST_CASE("a step that no coin pays is a mistake of the caller") {
    CHECK_THROWS_AS((void)to_price_point(money("10.31"), to_step("0.125")), std::logic_error);
}

TEST_CASE("no price point is below what is wanted, nor a step or a major unit above it") {
    Draw draw(11);
    PricePoint const endings = to_endings({"0.25", "0.50", "0.99"});
    for (int i = 0; i < 2000; ++i) {
        Money const wanted{Number(draw.whole(1, 99999)) / draw.whole(1, 999), currency()};
        Money const stepped = to_price_point(wanted, to_step("0.25")).money();
        REQUIRE(stepped >= wanted);
        REQUIRE(stepped - wanted < money("0.25"));
        REQUIRE((stepped.amount() / number("0.25")).is_whole());
        Money const ended = to_price_point(wanted, endings).money();
        REQUIRE(ended >= wanted);
        REQUIRE(ended - wanted < money("0.51")); // the widest gap is .99 to .50
        Money const nearest = to_price_point(wanted, to_step("0.25", true)).money();
        REQUIRE(nearest - wanted <= money("0.125"));
        REQUIRE(wanted - nearest < money("0.125"));
    }
}

TEST_CASE("the highest price point within an amount") {
    PricePoint quarter;
    quarter.step = money("0.25");
    CHECK(price_point_within(money("10.60"), quarter) == coins("10.50"));
    CHECK(price_point_within(money("10.50"), quarter) == coins("10.50"));
    PricePoint endings;
    endings.endings = {number("0.50"), number("0.99")};
    CHECK(price_point_within(money("10.31"), endings) == coins("9.99"));
    CHECK(price_point_within(money("10.50"), endings) == coins("10.50"));
    CHECK(price_point_within(money("10.999"), endings) == coins("10.99"));
    CHECK(price_point_within(money("10.319"), {}) == coins("10.31"));
    CHECK(price_point_within(money("0.31"), endings) == coins("-0.01"));
}
