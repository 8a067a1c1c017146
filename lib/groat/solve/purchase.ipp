#pragma once

#include <groat/solve/purchase.hpp>

#include <groat/base/linkage.hpp>
#include <groat/solve/purchase_to_market.hpp>

#include <fmt/format.h>

#include <string>

namespace groat {

GROAT_INLINE std::vector<PurchaseObstacle> purchase_obstacles(PurchaseProblem const& problem,
                                                              std::optional<std::size_t> only) {
    check_problem(problem);
    std::vector<bool> const can_use = purchasing::reachable(problem);
    std::size_t const items = problem.demands.size();
    // What all offers of an item hold, and what those of suppliers who can be used hold.
    struct Supply {
        bool is_offered = false;
        bool is_endless = false;
        Number content = {};
        [[nodiscard]] bool covers(Number const& demand) const {
            return is_endless || content >= demand;
        }
    };
    std::vector<Supply> all(items);
    std::vector<Supply> usable(items);
    for (PurchaseOffer const& offer : problem.offers) {
        if (only && offer.supplier != *only) continue;
        auto const add = [&](Supply& supply) {
            supply.is_offered = true;
            if (offer.most_packs)
                supply.content += offer.content * Number(*offer.most_packs);
            else
                supply.is_endless = true;
        };
        add(all[offer.item]);
        if (can_use[offer.supplier]) add(usable[offer.item]);
    }
    std::vector<PurchaseObstacle> found;
    using Kind = PurchaseObstacle::Kind;
    for (std::size_t i = 0; i < items; ++i) {
        if (problem.demands[i].is_zero() || usable[i].covers(problem.demands[i])) continue;
        found.push_back({!all[i].is_offered                   ? Kind::not_offered
                         : !all[i].covers(problem.demands[i]) ? Kind::too_few_packs
                                                              : Kind::unreached_order,
                         i});
    }
    return found;
}

namespace purchasing {

GROAT_INLINE Refused refuse(PurchaseObstacle const& obstacle) {
    using Kind = PurchaseObstacle::Kind;
    switch (obstacle.kind) {
    case Kind::not_offered:
        return groat::refuse("not-offered", fmt::format("item {} is not offered", obstacle.item),
                             "add an offer of it, or take it off what is to be bought");
    case Kind::too_few_packs:
        return groat::refuse(
            "too-few-packs",
            fmt::format("all packs that may be bought of item {} do not cover its demand",
                        obstacle.item),
            "raise the limit of packs, or add another offer");
    case Kind::unreached_order: break;
    }
    return groat::refuse(
        "minimum-unreached",
        fmt::format("item {} is offered only where no order reaches the minimum", obstacle.item),
        "raise the limits of packs, or add another offer");
}

GROAT_INLINE Result<PurchasePlan> answer(PurchaseProblem const& problem,
                                         Market<Integer> const& market,
                                         std::optional<std::size_t> only, std::uint64_t work) {
    std::vector<Standing> standing(market.suppliers.size(),
                                   only ? Standing::closed : Standing::undecided);
    if (only) {
        std::size_t const twin = market.twin[*only];
        standing[*only] = standing[twin] = twin == *only ? Standing::open : Standing::undecided;
    }
    std::vector<bool> const can_use = reachable(problem);
    for (std::size_t s = 0; s < can_use.size(); ++s)
        if (!can_use[s]) standing[s] = standing[market.twin[s]] = Standing::closed;
    if (fits_64_bits(market)) return answer(problem, to_64_bits(market), std::move(standing), work);
    return answer(problem, market, std::move(standing), work);
}

} // namespace purchasing

GROAT_INLINE Result<PurchasePlan> cheapest_purchase(PurchaseProblem const& problem,
                                                    std::uint64_t work) {
    auto const obstacles = purchase_obstacles(problem);
    if (!obstacles.empty()) return purchasing::refuse(obstacles.front());
    return purchasing::answer(problem, purchasing::to_market(problem), std::nullopt, work);
}

GROAT_INLINE Result<PurchasePlan> cheapest_purchase_from(PurchaseProblem const& problem,
                                                         std::size_t supplier, std::uint64_t work) {
    auto const obstacles = purchase_obstacles(problem, supplier);
    if (!obstacles.empty()) {
        Flaw flaw = purchasing::refuse(obstacles.front()).value();
        flaw.what = fmt::format("supplier {} alone: {}", supplier, flaw.what);
        return Refused(std::move(flaw));
    }
    return purchasing::answer(problem, purchasing::to_market(problem), supplier, work);
}

GROAT_INLINE Result<SinglePurchase> cheapest_single_purchase(PurchaseProblem const& problem,
                                                             std::uint64_t work) {
    std::optional<SinglePurchase> best;
    std::optional<Number> bound;
    std::optional<std::size_t> closest;
    std::size_t fewest = 0;
    purchasing::Market<Integer> const market = purchasing::to_market(problem);
    for (std::size_t s = 0; s < problem.suppliers.size(); ++s) {
        auto const obstacles = purchase_obstacles(problem, s);
        if (!closest || obstacles.size() < fewest) {
            closest = s;
            fewest = obstacles.size();
        }
        if (!obstacles.empty()) continue;
        auto purchase = purchasing::answer(problem, market, s, work);
        if (!purchase) continue;
        if (!bound || purchase->bound < *bound) bound = purchase->bound;
        if (!best || purchase->net() < best->purchase.net())
            best = SinglePurchase{s, *std::move(purchase)};
    }
    if (best) {
        best->purchase.bound = *bound;
        return *best;
    }
    if (!closest) return refuse("no-single-supplier", "there are no suppliers");
    auto const from_closest = cheapest_purchase_from(problem, *closest, work);
    return refuse("no-single-supplier",
                  fmt::format("nobody can supply everything; closest is supplier {}, short of {}",
                              *closest, fewest == 1 ? "1 item" : fmt::format("{} items", fewest)),
                  from_closest ? std::string() : from_closest.error().what);
}

} // namespace groat
