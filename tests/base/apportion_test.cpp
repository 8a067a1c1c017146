#include "figures.hpp"

#include <groat/base/apportion.hpp>

#include <numeric>
#include <stdexcept>
#include <string_view>
#include <vector>

using groat::apportion;
using groat::Integer;
using groat::Number;
using groat::round_to_total;
using groat::round_together;
using groat::Tie;

namespace {

using Wholes = std::vector<Integer>;
using Figures = std::vector<Number>;

template <class T> T sum_of(std::vector<T> const& parts) {
    return std::accumulate(parts.begin(), parts.end(), T());
}

Figures drawn(Draw& draw, std::int64_t least, std::int64_t most) {
    Figures figures;
    for (auto count = draw.whole(1, 12); count > 0; --count)
        figures.push_back(draw.number(least, most, 60));
    return figures;
}

} // namespace

TEST_CASE("a euro among three bakers leaves the odd cent with the first") {
    CHECK(apportion(100, Figures{1, 1, 1}) == Wholes{34, 33, 33});
    CHECK(apportion(101, Figures{1, 1, 1}) == Wholes{34, 34, 33});
    CHECK(apportion(-100, Figures{1, 1, 1}) == Wholes{-34, -33, -33}); // a refund of it mirrors it
}

TEST_CASE("the joint cost of two milks is divided to the cent, by gallons or by value") {
    // OpenStax Managerial Accounting m68085, which prints no answer. Worked here, in cents:
    // by quantity  4,000,000 x 42/46 = 3,652,173.91..., x 4/46 = 347,826.08...  the first has the larger rest
    CHECK(apportion(4'000'000, Figures{42'000, 4'000}) == Wholes{3'652'174, 347'826});
    // by value     4,000,000 x 104.5/155 = 2,696,774.19..., x 50.5/155 = 1,303,225.80...  the second has
    CHECK(apportion(4'000'000, Figures{104'500, 50'500}) == Wholes{2'696'774, 1'303'226});
}

TEST_CASE("what weighs nothing gets nothing, unless nothing weighs anything") {
    CHECK(apportion(100, Figures{0, 1, 0, 2}) == Wholes{0, 33, 0, 67});
    CHECK(apportion(100, Figures{0, 0}) == Wholes{100, 0});
    CHECK(apportion(0, Figures{1, 2}) == Wholes{0, 0});
}

TEST_CASE("dividing among nobody or by a negative weight is a mistake of the caller") {
    CHECK_THROWS_AS((void)apportion(100, Figures{}), std::logic_error);
    CHECK_THROWS_AS((void)apportion(100, Figures{2, -1}), std::logic_error);
}

TEST_CASE("however a total is divided, the parts add up to it and none is a step off its share") {
    Draw draw(5);
    for (int i = 0; i < 2'000; ++i) {
        Integer const total = draw.whole(-1'000'000, 1'000'000);
        Figures const weights = drawn(draw, 0, 50);
        Number const sum = sum_of(weights);
        if (sum.is_zero()) continue;
        Wholes const parts = apportion(total, weights);
        REQUIRE(parts.size() == weights.size());
        CHECK(sum_of(parts) == total);
        for (std::size_t k = 0; k < parts.size(); ++k) {
            Number const off = Number(parts[k]) - weights[k] * total / sum;
            CHECK(off < 1);
            CHECK(off > -1);
            if (weights[k].is_zero()) CHECK(parts[k] == 0);
            if (k > 0 && total > 0 && weights[k] > weights[k - 1]) CHECK(parts[k] >= parts[k - 1]);
        }
        Wholes const mirrored = apportion(-total, weights);
        for (std::size_t k = 0; k < parts.size(); ++k) CHECK(mirrored[k] == -parts[k]);
    }
}

TEST_CASE("dividing does not depend on the scale of the weights") {
    Draw draw(6);
    for (int i = 0; i < 500; ++i) {
        Integer const total = draw.whole(0, 100'000);
        Figures weights = drawn(draw, 0, 50);
        Wholes const parts = apportion(total, weights);
        Number const scale = draw.number(1, 9, 50);
        for (Number& weight : weights) weight *= scale;
        CHECK(apportion(total, weights) == parts);
    }
}

TEST_CASE("three thirds of a euro are printed so that the column adds up") {
    Number const third = Number(1) / 3;
    CHECK(round_together(Figures{third, third, third}, figure("0.01")) ==
          Figures{figure("0.34"), figure("0.33"), figure("0.33")});
}

TEST_CASE("exact figures stay as they are while their neighbours take the missing steps") {
    // 0.50 + 0.255 + 0.255 = 1.01: one of the two halves is raised, the exact one is not.
    CHECK(
        round_together(Figures{figure("0.50"), figure("0.255"), figure("0.255")}, figure("0.01")) ==
        Figures{figure("0.50"), figure("0.26"), figure("0.25")});
    // 1.004 - 0.004 = 1 with a discount in the column
    CHECK(round_together(Figures{figure("1.004"), figure("-0.004")}, figure("0.01")) ==
          Figures{figure("1.00"), figure("0.00")});
}

TEST_CASE("a column of no figures stays empty, of one it is rounded alone") {
    CHECK(round_together(Figures{}, figure("0.01")).empty());
    CHECK(round_together(Figures{figure("0.585")}, figure("0.01"), Tie::half_up) ==
          Figures{figure("0.59")});
    CHECK(round_together(Figures{figure("0.585")}, figure("0.01")) == Figures{figure("0.58")});
}

TEST_CASE("a column rounded together adds up to its rounded sum, no figure a step away") {
    Draw draw(7);
    for (int i = 0; i < 2'000; ++i) {
        Figures const column = drawn(draw, -20, 50);
        Number const step = draw.number(1, 3, 40);
        for (Tie const tie : {Tie::half_even, Tie::half_up, Tie::up, Tie::down}) {
            Figures const rounded = round_together(column, step, tie);
            REQUIRE(rounded.size() == column.size());
            CHECK(sum_of(rounded) == groat::round_to(sum_of(column), step, tie));
            for (std::size_t k = 0; k < column.size(); ++k) {
                Number const off = rounded[k] - column[k];
                CHECK((rounded[k] / step).is_whole());
                CHECK(off < step);
                CHECK(-off < step);
            }
        }
    }
}

TEST_CASE(
    "a column follows a total that was rounded elsewhere, up to a step away from its own sum") {
    Figures const column{figure("0.50"), figure("0.30"), figure("0.20")}; // exactly 1
    Number const step = figure("0.5");
    // rounded down 0.50 + 0 + 0; remainders 0, 0.6 and 0.4 of a step
    CHECK(round_to_total(column, step, 1) == Figures{figure("0.5"), figure("0.5"), 0});
    CHECK(round_to_total(column, step, figure("1.5")) ==
          Figures{figure("0.5"), figure("0.5"), figure("0.5")});
    CHECK(round_to_total(column, step, figure("0.5")) == Figures{figure("0.5"), 0, 0});
    CHECK(round_to_total(Figures{1, 1}, 1, 3) ==
          Figures{2, 1}); // nothing to raise by need: the first
    CHECK(round_to_total(Figures{1, 1}, 1, 1) == Figures{1, 0});
    CHECK(round_to_total(Figures{}, 1, 0).empty());
}

TEST_CASE("a column made to fit a total within a step of its sum adds up to that total") {
    Draw draw(8);
    for (int i = 0; i < 1'000; ++i) {
        Figures const column = drawn(draw, -20, 50);
        Number const step = draw.number(1, 3, 40);
        Number const sum = sum_of(column);
        for (Tie const tie : {Tie::up, Tie::down}) {
            Number const total = groat::round_to(sum, step, tie);
            CHECK(sum_of(round_to_total(column, step, total)) == total);
        }
        if ((sum / step).is_whole()) {
            CHECK(sum_of(round_to_total(column, step, sum + step)) == sum + step);
            CHECK(sum_of(round_to_total(column, step, sum - step)) == sum - step);
        }
    }
}
