// How long the cheapest purchase takes, and how far from best it may be: 12 suppliers with deliveries and
// minimum orders, 200 items with 6 offers each. The gap is a counter, in hundredths of a per cent of the total.
#include <groat/base/rounding.hpp>
#include <groat/solve/purchase.hpp>

#include <benchmark/benchmark.h>

#include <random>

namespace {

/// An invented market, the same for a seed everywhere: the engine's figures are fixed by the standard.
groat::PurchaseProblem market(std::uint32_t seed) {
    std::mt19937 engine(seed);
    auto const between = [&](std::uint32_t low, std::uint32_t high) {
        return low + static_cast<std::uint32_t>(engine()) % (high - low + 1);
    };
    groat::Number const cent = groat::Number(1) / 100;
    groat::PurchaseProblem problem;
    for (int s = 0; s < 12; ++s)
        problem.suppliers.push_back({groat::Number(between(500, 4000)) * cent,
                                     groat::Number(between(5'000, 600'000)) * cent});
    constexpr std::uint32_t packs[] = {1, 2, 5, 10, 12, 25, 50};
    for (std::size_t i = 0; i < 200; ++i) {
        problem.demands.push_back(groat::Number(between(1, 120)));
        std::uint32_t const base = between(20, 900); // cents for one unit
        for (int o = 0; o < 6; ++o) {
            groat::PurchaseOffer offer;
            offer.item = i;
            offer.supplier = between(0, 11);
            std::uint32_t const content = packs[between(0, 6)];
            offer.content = groat::Number(content);
            std::uint32_t const price = 1 + base * content * between(80, 120) / 100;
            offer.price = {groat::Number(price + (seed % 2) * between(0, price / 20)) * cent,
                           groat::Number(price) * cent};
            if (between(0, 4) == 0)
                offer.breaks.push_back({groat::Integer(between(2, 6)),
                                        {offer.price.cost * (groat::Number(95) / 100),
                                         offer.price.counted * (groat::Number(95) / 100)}});
            if (between(0, 9) == 0) offer.most_packs = groat::Integer(between(1, 12));
            problem.offers.push_back(std::move(offer));
        }
    }
    return problem;
}

void cheapest_purchase(benchmark::State& state) {
    groat::PurchaseProblem const problem = market(static_cast<std::uint32_t>(state.range(0)));
    groat::Number share;
    groat::Number total;
    for (auto _ : state) {
        auto const purchase = groat::cheapest_purchase(problem);
        if (!purchase) {
            state.SkipWithError(purchase.error().what.c_str());
            break;
        }
        total = purchase->total;
        share = purchase->most_saving_share();
    }
    auto const whole = [](groat::Number const& number) {
        return static_cast<double>(static_cast<long>(groat::steps(number, 1, groat::Tie::up)));
    };
    state.counters["cents"] = whole(total * 100);
    state.counters["gap_1e-4"] = whole(share * 10'000);
}
BENCHMARK(cheapest_purchase)->DenseRange(1, 8)->Unit(benchmark::kMillisecond)->Iterations(1);

} // namespace
