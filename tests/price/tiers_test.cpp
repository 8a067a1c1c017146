#include <groat/price/tiers.hpp>

#include "books.hpp"

#include <fmt/format.h>

using namespace groat;
using namespace groat::test;

namespace {

/// 6.00 once and 1.00 each at cost; asks twice the cost. A range above a hundred counts cannot be told.
struct Plain {
    [[nodiscard]] std::optional<std::vector<Integer>> dearest(Integer const& first,
                                                              Integer const& last) const {
        if (last - first > 100) return std::nullopt;
        return std::vector<Integer>{first};
    }
    [[nodiscard]] static CountPrice at(Integer const& count) {
        CountPrice price;
        price.count = count;
        price.burden.cost = money("1.00") + money("6.00") / Number(count);
        price.burden.fee.fixed = money("0.00");
        price.ask(to_coins(price.burden.cost * 2, {Tie::up, 0}), is_tax_contained());
        return price;
    }
    [[nodiscard]] static bool is_tax_contained() { return false; }
};

std::string in_words(std::vector<TierRange> const& ranges) {
    std::string words;
    for (TierRange const& each : ranges)
        words += fmt::format("{}-{} ", each.from.str(), each.to.str());
    return words;
}

/// Tiers of 1, 4 and 10 at prices that let larger counts cost less.
std::vector<Tier> three_tiers() {
    std::vector<Tier> tiers(3);
    std::size_t i = 0;
    for (TierRange const& range : tier_ranges({1, 4, 10}, Integer(20))) {
        tiers[i].from = range.from;
        tiers[i++].to = range.to;
    }
    tiers[0].price = coins("81.00");
    tiers[1].price = coins("36.50");
    tiers[2].price = coins("32.00");
    return tiers;
}

} // namespace

TEST_CASE("a tier reaches to the next start, the last to the most or four times its own") {
    CHECK(in_words(tier_ranges({1, 10, 4, 10}, {})) == "1-3 4-9 10-40 ");
    CHECK(in_words(tier_ranges({1, 10}, Integer(60))) == "1-9 10-60 ");
    CHECK(in_words(tier_ranges({5}, {})) == "5-20 ");
    CHECK(in_words(tier_ranges({5, 80}, Integer(60))) == "5-79 80-80 "); // what is ordered is above
    CHECK(in_words(tier_ranges({}, {})).empty());
}

TEST_CASE("a tier asks the highest price, and what its last count needs is known") {
    Plain counts;
    auto const tier = tier_of(0, {4, 9}, counts);
    REQUIRE(tier.has_value());
    CHECK(tier->price == coins("5.00")); // 2 x (1.00 + 6.00 / 4)
    CHECK(tier->worst == 4);
    CHECK(tier->last.count == 9);
    CHECK(tier->last.price == coins("3.34"));
    CHECK(tier->earned.profit == money("2.50"));
    CHECK(tier->costed.size() == 2);
    REQUIRE(tier->mending.has_value());
    CHECK(tier->mending->start == 6);
    CHECK(tier->mending->price == coins("4.00"));
}

TEST_CASE("a tier of one count is that count") {
    Plain counts;
    auto const tier = tier_of(0, {4, 4}, counts);
    REQUIRE(tier.has_value());
    CHECK(tier->price == tier->last.price);
    CHECK(!tier->is_far_dearer());
}

TEST_CASE("a range that cannot be looked through has no tier") {
    Plain counts;
    CHECK_FALSE(tier_of(0, {1, 1000}, counts).has_value());
}

TEST_CASE("a cap begins at the first count that would cost more than a larger one") {
    // 2 at 81.00 are 162.00, more than 4 at 36.50; 9 at 36.50 are 328.50, more than 10 at 32.00, and 8 are 292.00
    std::vector<Tier> tiers = three_tiers();
    cap_tiers(tiers, std::nullopt);
    REQUIRE(tiers[0].cap.has_value());
    CHECK(tiers[0].cap->from == 2);
    CHECK(tiers[0].cap->more == 4);
    CHECK(tiers[0].cap->total == coins("146.00"));
    REQUIRE(tiers[1].cap.has_value());
    CHECK(tiers[1].cap->from == 9);
    CHECK(tiers[1].cap->total == coins("320.00"));
    CHECK(!tiers[2].cap);
}

TEST_CASE("what is asked for the count that is ordered is a cap as well") {
    std::vector<Tier> tiers = three_tiers();
    cap_tiers(tiers, Cap{4, 4, coins("140.00")});
    CHECK(tiers[0].cap->total == coins("140.00"));
    CHECK(tiers[0].cap->from == 2);
    CHECK(tiers[1].cap->total == coins("320.00"));
}

TEST_CASE("the least of all larger counts is the cap, wherever it is") {
    std::vector<Tier> tiers = three_tiers();
    tiers[2].price = coins("14.00"); // 10 are 140.00, less than 4 at 36.50
    cap_tiers(tiers, std::nullopt);
    CHECK(tiers[0].cap->more == 10);
    CHECK(tiers[1].cap->from == 4); // 146.00 already
    CHECK(tiers[1].cap->total == coins("140.00"));
}
