#include <groat/solve/purchase.hpp>

#include <groat/base/rounding.hpp>

#include <doctest/doctest.h>

#include <random>

using namespace groat;

namespace {

Number amount(std::string_view text) { return *parse_number(text); }

PurchaseOffer pack(std::size_t supplier, std::size_t item, std::string_view content,
                   std::string_view price) {
    return {supplier, item, amount(content), {amount(price), amount(price)}};
}

/// One item, one supplier without delivery or minimum.
PurchaseProblem packs_of_one(std::string_view need,
                             std::vector<std::pair<std::string_view, std::string_view>> packs) {
    PurchaseProblem problem{{amount(need)}, {{}}, {}};
    for (auto const& [content, price] : packs) problem.offers.push_back(pack(0, 0, content, price));
    return problem;
}

struct Bought {
    std::vector<int> packs;
    std::string total;
};

void check_purchase(PurchaseProblem const& problem, Bought const& expected) {
    auto const found = cheapest_purchase(problem);
    REQUIRE(found);
    CHECK(found->is_optimal());
    CHECK(found->total == amount(expected.total));
    CHECK(found->packs == std::vector<Integer>(expected.packs.begin(), expected.packs.end()));
}

std::string refusal(PurchaseProblem const& problem) {
    auto const found = cheapest_purchase(problem);
    return found ? "bought" : std::string(found.error().code) + ": " + found.error().what;
}

/// What a plan costs, calculated anew from the offers; nothing where it is none.
std::optional<Number> cost_of(PurchaseProblem const& problem, std::vector<Integer> const& packs) {
    std::vector<Number> content(problem.demands.size());
    std::vector<Number> counted(problem.suppliers.size());
    std::vector<bool> is_used(problem.suppliers.size());
    Number total;
    for (std::size_t o = 0; o < packs.size(); ++o) {
        PurchaseOffer const& offer = problem.offers[o];
        if (packs[o] == 0) continue;
        if (packs[o] < 0 || (offer.most_packs && packs[o] > *offer.most_packs)) return std::nullopt;
        PackPrice price = offer.price;
        for (PackBreak const& each : offer.breaks)
            if (each.packs <= packs[o]) price = each.price;
        total += price.cost * packs[o];
        counted[offer.supplier] += price.counted * packs[o];
        content[offer.item] += offer.content * packs[o];
        is_used[offer.supplier] = true;
    }
    for (std::size_t i = 0; i < content.size(); ++i)
        if (content[i] < problem.demands[i]) return std::nullopt;
    for (std::size_t s = 0; s < counted.size(); ++s) {
        if (!is_used[s]) continue;
        total += problem.suppliers[s].delivery_of(counted[s]);
        if (counted[s] < problem.suppliers[s].minimum) return std::nullopt;
    }
    return total;
}

/// An invented problem, the same everywhere for a seed, that can always be met.
class Invented {
public:
    explicit Invented(std::uint32_t seed) : engine_(seed) {
        std::size_t const suppliers = between(1, 4);
        for (std::size_t s = 0; s < suppliers; ++s)
            problem.suppliers.push_back(
                {cents(between(0, 1) * between(0, 1500)), cents(between(0, 1) * between(0, 6000))});
        for (std::size_t i = between(1, 8); i > 0; --i)
            problem.demands.push_back(Number(between(0, 40)) / between(1, 3));
        for (std::size_t i = 0; i < problem.demands.size(); ++i)
            for (std::size_t n = between(1, 3); n > 0; --n) add_offer(i, n > 1);
    }

    void add_offer(std::size_t item, bool may_be_limited) {
        PurchaseOffer offer;
        offer.item = item;
        offer.supplier = between(0, problem.suppliers.size() - 1);
        offer.content = Number(between(1, 30)) / between(1, 2);
        std::size_t const price = between(20, 2000);
        offer.price = {cents(price + between(0, 40)), cents(price)};
        if (between(0, 2) == 0)
            offer.breaks.push_back(
                {Integer(between(2, 6)), {cents(price - 10), cents(price - 15)}});
        if (may_be_limited && between(0, 3) == 0) offer.most_packs = Integer(between(0, 8));
        problem.offers.push_back(std::move(offer));
    }
    std::size_t any_item() { return between(0, problem.demands.size() - 1); }

    PurchaseProblem problem;

private:
    std::size_t between(std::size_t low, std::size_t high) {
        return low + static_cast<std::size_t>(engine_()) % (high - low + 1);
    }
    static Number cents(std::size_t count) { return Number(count) / 100; }
    std::mt19937 engine_;
};

} // namespace

TEST_CASE("7 kg of flour are bought in one large bag") {
    // P1 of the design's oracle cases (glpsol, cbc, lp_solve and brute force agree): sacks of 5, 25 and 4 lb;
    // one of 25 lb leaves 11339.80925 - 7000 = 4339.80925 g over
    check_purchase(
        packs_of_one("7000",
                     {{"2267.96185", "4.29"}, {"11339.80925", "14.99"}, {"1814.36948", "3.79"}}),
        {{0, 1, 0}, "14.99"});
}

TEST_CASE(
    "14 lb of butter are bought in small cases, though the large one is cheaper by the pound") {
    // P2: 3 x 16.79 + 2 x 4.49 = 59.35; the case of 36 lb would be 128.00
    check_purchase(packs_of_one("14", {{"1", "4.49"}, {"4", "16.79"}, {"36", "128.00"}}),
                   {{2, 3, 0}, "59.35"});
}

TEST_CASE(
    "60 pieces are bought without any left over, though other packs are cheaper by the piece") {
    // P4: 3 x 20.00 = 60.00; by the cheapest piece it would be 2 x 50.00
    check_purchase(packs_of_one("60", {{"25", "24.00"}, {"20", "20.00"}, {"55", "50.00"}}),
                   {{0, 3, 0}, "60.00"});
}

TEST_CASE("a delivery is paid once, and saved where it is more than the goods are cheaper") {
    // Both items from 0: 10 + 10 + 5 = 25; from 1: 9 + 9 + 5 = 23; one from each would pay 10 of delivery
    PurchaseProblem problem{{1, 1}, {{5, 0}, {5, 0}}, {}};
    problem.offers = {pack(0, 0, "1", "10"), pack(0, 1, "1", "10"), pack(1, 0, "1", "9"),
                      pack(1, 1, "1", "9")};
    check_purchase(problem, {{0, 0, 1, 1}, "23"});
    problem.offers[1] = pack(0, 1, "1", "3"); // 9 + 3 + 10 = 22 against 10 + 3 + 5 = 18
    check_purchase(problem, {{1, 1, 0, 0}, "18"});
    auto const found = cheapest_purchase(problem);
    CHECK(found->delivery == 5);
}

TEST_CASE("a minimum order is reached by buying more than is needed, where that is cheapest") {
    // 0 sells at 4 from 20 on: 5 packs are 20. 1 sells at 7 without minimum: 3 packs are 21.
    PurchaseProblem problem{{3}, {{0, 20}, {}}, {pack(0, 0, "1", "4"), pack(1, 0, "1", "7")}};
    check_purchase(problem, {{5, 0}, "20"});
    problem.suppliers[0].minimum = 22; // 6 packs are 24
    check_purchase(problem, {{0, 3}, "21"});
}

TEST_CASE("more is bought where that saves a delivery, and no more where it does not") {
    // From 0, at 4 with a delivery of 5 that is free from 16: 3 packs and delivery are 17, 4 packs are 16
    PurchaseProblem problem{{3}, {{5, 0, 16}}, {pack(0, 0, "1", "4")}};
    check_purchase(problem, {{4}, "16"});
    CHECK(cheapest_purchase(problem)->delivery.is_zero());
    problem.suppliers[0].free_from = 18; // 5 packs are 20
    check_purchase(problem, {{3}, "17"});
    CHECK(cheapest_purchase(problem)->delivery == 5);
    problem.offers[0].most_packs = 3; // it cannot be reached: no more packs than there are
    problem.suppliers[0].free_from = 13;
    check_purchase(problem, {{3}, "17"});
    problem.suppliers[0].free_from = 12;
    check_purchase(problem, {{3}, "12"});
    auto const single = cheapest_single_purchase(problem);
    REQUIRE(single);
    CHECK(single->supplier == 0);
    CHECK(single->purchase.total == 12);
}

TEST_CASE("a delivery that is free from the minimum order, or from nothing, is never paid") {
    PurchaseProblem problem{{3}, {{5, 0, 0}}, {pack(0, 0, "1", "4")}};
    check_purchase(problem, {{3}, "12"});
    problem.suppliers[0] = {5, 12, 8};
    check_purchase(problem, {{3}, "12"});
}

TEST_CASE("freight does not count towards a minimum order") {
    PurchaseProblem problem{{1}, {{0, 10}}, {pack(0, 0, "1", "5")}};
    problem.offers[0].price.cost = 7;
    check_purchase(problem, {{2}, "14"});
}

TEST_CASE("from a number of packs on every pack has the price of the break") {
    // 4 packs at 10 are 40, 5 at 7 are 35
    PurchaseProblem problem{{4}, {{}}, {pack(0, 0, "1", "10")}};
    problem.offers[0].breaks = {{5, {7, 7}}};
    check_purchase(problem, {{5}, "35"});
    problem.offers[0].most_packs = 4;
    check_purchase(problem, {{4}, "40"});
}

TEST_CASE("a break may be dearer, and is then avoided") {
    // Of one offer 3 packs at 2, but all 4 at 5 each; the fourth comes from the other at 6
    PurchaseProblem problem{{4}, {{}}, {pack(0, 0, "1", "2"), pack(0, 0, "1", "6")}};
    problem.offers[0].breaks = {{4, {5, 5}}};
    check_purchase(problem, {{3, 1}, "12"});
}

TEST_CASE("what is left over saves what it will be used for, and no more") {
    // 1 is wanted: 1 for 1.50, 3 for 3.00. Of the 2 left over of the large pack each saves 1.00 where it is used.
    PurchaseProblem problem = packs_of_one("1", {{"1", "1.50"}, {"3", "3.00"}});
    problem.uses = {{2, 1}};
    check_purchase(problem, {{0, 1}, "3"});
    CHECK(cheapest_purchase(problem)->worth == 2);
    CHECK(cheapest_purchase(problem)->net() == 1);
    problem.uses = {{1, 1}}; // 3.00 - 1.00 is more than 1.50
    check_purchase(problem, {{1, 0}, "1.5"});
    problem.uses = {{amount("1 1/2"), 1}}; // and so is 3.00 - 1.50 no less: the first found
    CHECK(cheapest_purchase(problem)->net() == amount("1.5"));
    problem.uses = {{100, amount("1/10")}}; // worth less than any pack costs
    check_purchase(problem, {{1, 0}, "1.5"});
    problem.uses = {{100, 2}}; // worth more: as much as will be used
    CHECK(cheapest_purchase(problem)->worth == 200);
}

TEST_CASE("of what comes to the same in the end the plan asks the least today") {
    PurchaseProblem problem = packs_of_one("1", {{"1", "1.50"}});
    problem.uses = {{50, amount("1.50")}}; // fifty more would save what they cost
    check_purchase(problem, {{1}, "1.5"});
}

TEST_CASE("leftovers that will be used help to a minimum order") {
    // From 0, at 4 from 20 on, 5 packs are 20, of which 2 are left over and save 3 each: 14. From 1 it is 15.
    PurchaseProblem problem{{3}, {{0, 20}, {}}, {pack(0, 0, "1", "4"), pack(1, 0, "1", "5")}};
    check_purchase(problem, {{0, 3}, "15"});
    problem.uses = {{2, 3}};
    check_purchase(problem, {{5, 0}, "20"});
    CHECK(cheapest_purchase(problem)->is_optimal());
}

TEST_CASE("nothing needed is nothing bought") {
    check_purchase({{0, 0}, {{5, 10}}, {pack(0, 0, "1", "2")}}, {{0}, "0"});
    check_purchase({{}, {}, {}}, {{}, "0"});
    CHECK(cheapest_purchase({{0}, {{}}, {}})->most_saving_share() == 0);
}

TEST_CASE("what cannot be bought is refused with the reason") {
    PurchaseProblem problem{{1, 5}, {{}, {}}, {pack(0, 0, "1", "2")}};
    CHECK(refusal(problem) == "not-offered: item 1 is not offered");
    problem.offers.push_back(pack(1, 1, "2", "2"));
    problem.offers[1].most_packs = 2;
    CHECK(refusal(problem) ==
          "too-few-packs: all packs that may be bought of item 1 do not cover its demand");
    problem.offers[1].most_packs = 3;
    CHECK(refusal(problem) == "bought");
    problem.suppliers[1].minimum = 7;
    CHECK(refusal(problem) ==
          "minimum-unreached: item 1 is offered only where no order reaches the minimum");
    auto const found = purchase_obstacles(problem);
    REQUIRE(found.size() == 1);
    CHECK(found[0].kind == PurchaseObstacle::Kind::unreached_order);
    CHECK(found[0].item == 1);
}

TEST_CASE("a demand and a minimum that exclude each other are found out") {
    // 2 packs cover, but from 2 on they count 3 each: 6 of 8. One pack alone counts 8.
    PurchaseProblem problem{{2}, {{0, 8}}, {pack(0, 0, "1", "8")}};
    problem.offers[0].breaks = {{2, {3, 3}}};
    problem.offers[0].most_packs = 2;
    CHECK(refusal(problem) ==
          "no-purchase: no purchase keeps to all minimum orders and limits of packs");
}

TEST_CASE("the cheapest single supplier, or who comes closest") {
    PurchaseProblem problem{{1, 1}, {{5, 0}, {1, 0}, {}}, {}};
    problem.offers = {pack(0, 0, "1", "4"), pack(0, 1, "1", "4"), pack(1, 0, "1", "6"),
                      pack(1, 1, "1", "7"), pack(2, 0, "1", "3")};
    auto const single = cheapest_single_purchase(problem);
    REQUIRE(single);
    CHECK(single->supplier == 0); // 13 against 14; the third has not everything
    CHECK(single->purchase.total == 13);
    CHECK(cheapest_purchase(problem)->total ==
          11); // 3 of the third, 7 and a delivery of 1 of the second
    problem.offers.erase(problem.offers.begin() + 1, problem.offers.begin() + 4);
    auto const none = cheapest_single_purchase(problem);
    REQUIRE(!none);
    CHECK(none.error().code == "no-single-supplier");
    CHECK(none.error().what ==
          "nobody can supply everything; closest is supplier 0, short of 1 item");
    CHECK(none.error().help == "supplier 0 alone: item 1 is not offered");
}

TEST_CASE("figures that no 64 bits hold are calculated all the same") {
    // Prices over unlike primes: 1/1000003 apart in the last of 40 digits
    PurchaseProblem problem{{amount("14")}, {{amount("1/999983"), 0}}, {}};
    for (std::string_view const content : {"1", "4", "36"})
        problem.offers.push_back(pack(0, 0, content, "1"));
    problem.offers[0].price.cost = amount("449/100") + amount("1/1000000000000000000039");
    problem.offers[1].price.cost = amount("1679/100") + amount("1/1000000000000000000117");
    problem.offers[2].price.cost = 128;
    auto const found = cheapest_purchase(problem);
    REQUIRE(found);
    CHECK(found->is_optimal());
    CHECK(found->packs == std::vector<Integer>{2, 3, 0});
    CHECK(found->total == *cost_of(problem, found->packs));
}

TEST_CASE("with worth of leftovers the answer is that of trying everything") {
    for (std::uint32_t seed = 1; seed <= 120; ++seed) {
        CAPTURE(seed);
        PurchaseProblem problem = Invented(seed).problem;
        problem.demands.resize(std::min<std::size_t>(problem.demands.size(), 2));
        std::erase_if(problem.offers, [&](PurchaseOffer const& offer) {
            return offer.item >= problem.demands.size();
        });
        for (std::size_t i = 0; i < problem.demands.size(); ++i)
            problem.uses.push_back({Number(Integer((seed + i) % 7)) * 3 / 2,
                                    Number(Integer((seed * 7 + i) % 90)) / 100});
        if (problem.offers.size() > 4) continue;
        // More packs than these neither cover, are used, nor reach a minimum or a break.
        std::vector<Integer> most;
        std::size_t plans = 1;
        for (PurchaseOffer const& offer : problem.offers) {
            Number const wanted = problem.demands[offer.item] + problem.use(offer.item).useful;
            Integer packs = ceiling(wanted / offer.content).numerator() + 7;
            Number const& minimum = problem.suppliers[offer.supplier].minimum;
            for (Number const& counted :
                 {offer.price.counted,
                  offer.breaks.empty() ? offer.price.counted : offer.breaks[0].price.counted})
                if (counted.is_positive())
                    packs = std::max(packs, ceiling(minimum / counted).numerator());
            if (offer.most_packs) packs = std::min(packs, *offer.most_packs);
            most.push_back(packs);
            plans *= static_cast<std::size_t>(packs) + 1;
        }
        if (plans > 4000) continue;
        std::optional<Number> best;
        for (std::size_t plan = 0; plan < plans; ++plan) {
            std::vector<Integer> packs;
            std::size_t rest = plan;
            for (Integer const& each : most) {
                packs.emplace_back(rest % (static_cast<std::size_t>(each) + 1));
                rest /= static_cast<std::size_t>(each) + 1;
            }
            auto net = cost_of(problem, packs);
            if (!net) continue;
            for (std::size_t i = 0; i < problem.demands.size(); ++i) {
                Number left = -problem.demands[i];
                for (std::size_t o = 0; o < packs.size(); ++o)
                    if (problem.offers[o].item == i)
                        left += problem.offers[o].content * Number(packs[o]);
                *net -= problem.uses[i].worth * std::min(left, problem.uses[i].useful);
            }
            if (!best || *net < *best) best = net;
        }
        auto const found = cheapest_purchase(problem);
        REQUIRE(found.has_value() == best.has_value());
        if (!found) continue;
        CHECK(found->is_optimal());
        CHECK(found->net() == *best);
        CHECK(found->total == cost_of(problem, found->packs));
    }
}

TEST_CASE("a problem that cannot be is misuse") {
    CHECK_THROWS_AS((void)cheapest_purchase({{-1}, {}, {}}), std::logic_error);
    CHECK_THROWS_AS((void)cheapest_purchase({{1}, {{}}, {pack(1, 0, "1", "1")}}), std::logic_error);
    CHECK_THROWS_AS((void)cheapest_purchase({{1}, {{}}, {pack(0, 0, "0", "1")}}), std::logic_error);
    PurchaseProblem problem{{1}, {{}}, {pack(0, 0, "1", "1")}};
    problem.offers[0].breaks = {{5, {1, 1}}, {5, {1, 1}}};
    CHECK_THROWS_AS((void)cheapest_purchase(problem), std::logic_error);
}

TEST_CASE("laws of the cheapest purchase") {
    for (std::uint32_t seed = 1; seed <= 150; ++seed) {
        CAPTURE(seed);
        Invented invented(seed);
        PurchaseProblem const problem = invented.problem;
        auto const found = cheapest_purchase(problem, 3'000'000);
        if (!found) {
            CHECK(found.error().code == "minimum-unreached");
            continue;
        }
        // The plan holds and costs what it says; the bound is none above.
        CHECK(cost_of(problem, found->packs) == found->total);
        CHECK(found->bound <= found->total);
        // The same again, and the same total whatever the order of the offers.
        CHECK(cheapest_purchase(problem, 3'000'000)->packs == found->packs);
        PurchaseProblem other = problem;
        std::reverse(other.offers.begin(), other.offers.end());
        auto const reversed = cheapest_purchase(other, 3'000'000);
        CHECK(reversed->bound <= found->total);
        CHECK(found->bound <= reversed->total);
        // With little work it is no better, and its bound no lie.
        auto const hasty = cheapest_purchase(problem, 1);
        if (hasty) {
            CHECK(hasty->bound <= found->total);
            CHECK(found->bound <= hasty->total);
        }
        if (!found->is_optimal()) continue;
        // All prices times a third: the total times a third.
        other = problem;
        Number const third = Number(1) / 3;
        for (PurchaseSupplier& supplier : other.suppliers) {
            supplier.delivery *= third;
            supplier.minimum *= third;
        }
        for (PurchaseOffer& offer : other.offers) {
            offer.price = {offer.price.cost * third, offer.price.counted * third};
            for (PackBreak& each : offer.breaks)
                each.price = {each.price.cost * third, each.price.counted * third};
        }
        CHECK(cheapest_purchase(other, 3'000'000)->total == found->total * third);
        // One more offer, or a lower minimum, or less needed: never dearer.
        invented.add_offer(invented.any_item(), true);
        CHECK(cheapest_purchase(invented.problem, 3'000'000)->bound <= found->total);
        other = problem;
        other.suppliers[0].minimum *= third;
        CHECK(cheapest_purchase(other, 3'000'000)->bound <= found->total);
        other = problem;
        other.demands[0] *= third;
        CHECK(cheapest_purchase(other, 3'000'000)->bound <= found->total);
        // One supplier alone is never cheaper than all.
        auto const single = cheapest_single_purchase(problem, 3'000'000);
        if (single) {
            CHECK(single->purchase.total >= found->total);
            CHECK(cost_of(problem, single->purchase.packs) == single->purchase.total);
        }
    }
}
