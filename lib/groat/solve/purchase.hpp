/// Buying what is needed at the least outlay: how many packs of which offers, from which suppliers, so that
/// every demand is covered, every supplier who is used reaches the minimum order, and price, freight and
/// delivery together come to the least. The answer is the true minimum, or says how far from it at most:
/// a bound is proven for every answer, in exact arithmetic. The same problem always has the same answer;
/// of equally cheap plans it is the first that the search finds, which looks at suppliers and offers in the
/// order given.
#pragma once

#include <groat/solve/purchase_search.hpp>
#include <groat/solve/purchase_to_market.hpp>

#include <string>

namespace groat {

/// A purchase and what is known about it. Money is net, in the problem's currency.
struct PurchasePlan {
    std::vector<Integer> packs; ///< of each offer
    Number total;               ///< what the packs cost, and the deliveries
    Number delivery;            ///< of the suppliers who are used
    Number worth; ///< of what will be used of what is left over; 0 where that is not asked
    Number bound; ///< no purchase that meets the problem costs less, less worth

    [[nodiscard]] Number net() const { return total - worth; }
    [[nodiscard]] bool is_optimal() const { return net() == bound; }
    /// The most that a better purchase could save: `net - bound`.
    [[nodiscard]] Number most_saving() const { return net() - bound; }
    /// That as a part of the total; 0 where nothing is paid.
    [[nodiscard]] Number most_saving_share() const {
        return total.is_zero() ? Number() : most_saving() / total;
    }
};

/// A purchase from one supplier alone.
struct SinglePurchase {
    std::size_t supplier = 0;
    PurchasePlan purchase;
};

/// Why nothing, or nothing from one supplier, can be bought.
struct PurchaseObstacle {
    enum class Kind {
        not_offered,     ///< nobody offers the item
        too_few_packs,   ///< the limits of packs leave the item short
        unreached_order, ///< all that offer the item could not reach their minimum if bought out
    };
    Kind kind = Kind::not_offered;
    std::size_t item = 0;
};

/// How much work an answer may take unless said otherwise: some seconds.
inline constexpr std::uint64_t usual_purchase_work = 100'000'000;

/// The items that cannot be bought at all, whatever is paid; of all suppliers, or of one alone.
[[nodiscard]] std::vector<PurchaseObstacle> purchase_obstacles(
    PurchaseProblem const& problem, std::optional<std::size_t> only = std::nullopt);

/// The purchase with the least total.
///
///     total = sum over offers of packs * cost at that many packs
///           + sum over suppliers who are used of delivery
///
/// Where the problem says what will be used of what is left over, that with the least
///
///     net = total - sum over items of worth * min(content - demand, useful)
///
/// Buying more than is needed to reach a minimum is part of the choice. `work` counts steps of the search,
/// not time, so that an answer does not depend on the machine; when it runs out, `bound` may be below
/// `total`. Exact: nothing is rounded.
/// Fails    when an item cannot be had (see `purchase_obstacles`); when minimums and limits exclude each
///          other; when the work ran out before any plan was found
/// Throws   `std::logic_error` as `check_problem` does
/// Example  60 units of packs of 25 for 24.00, of 20 for 20.00, of 55 for 50.00  ->  3 packs of 20, 60.00
[[nodiscard]] Result<PurchasePlan> cheapest_purchase(PurchaseProblem const& problem,
                                                     std::uint64_t work = usual_purchase_work);

/// The cheapest purchase from exactly one supplier, of equally cheap ones from the earliest. Its bound is
/// for purchases from one supplier. `work` is for each supplier.
/// Fails    when nobody can supply everything, naming who comes closest and an item that is missing
[[nodiscard]] Result<SinglePurchase> cheapest_single_purchase(
    PurchaseProblem const& problem, std::uint64_t work = usual_purchase_work);

/// The cheapest purchase from the one supplier named.
[[nodiscard]] Result<PurchasePlan> cheapest_purchase_from(PurchaseProblem const& problem,
                                                          std::size_t supplier,
                                                          std::uint64_t work = usual_purchase_work);

// ---------------------------------------------------------------------------------------------------

inline std::vector<PurchaseObstacle> purchase_obstacles(PurchaseProblem const& problem,
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

inline Refused refuse(PurchaseObstacle const& obstacle) {
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

template <class Whole>
Result<PurchasePlan> answer(PurchaseProblem const& problem, Market<Whole> const& market,
                            std::vector<Standing> standing, std::uint64_t most_work) {
    Work work{most_work};
    auto const found = Search<Whole>(market, work).run(std::move(standing));
    if (!found.packs && found.is_complete)
        return groat::refuse("no-purchase",
                             "no purchase keeps to all minimum orders and limits of packs",
                             "lower a minimum, or raise a limit of packs");
    if (!found.packs)
        return groat::refuse("purchase-too-hard",
                             fmt::format("no purchase was found within {} steps", most_work),
                             "allow more steps");
    PurchasePlan purchase;
    purchase.packs.resize(problem.offers.size());
    std::vector<bool> is_used(problem.suppliers.size());
    for (std::size_t b = 0; b < market.bids.size(); ++b) {
        if ((*found.packs)[b] == 0) continue;
        purchase.packs[market.bids[b].offer] += Integer((*found.packs)[b]);
    }
    std::vector<Number> counted(problem.suppliers.size());
    for (std::size_t o = 0; o < problem.offers.size(); ++o) {
        PurchaseOffer const& offer = problem.offers[o];
        if (purchase.packs[o] == 0) continue;
        PackPrice const& price = offer.price_at(purchase.packs[o]);
        purchase.total += price.cost * Number(purchase.packs[o]);
        counted[offer.supplier] += price.counted * Number(purchase.packs[o]);
        is_used[offer.supplier] = true;
    }
    for (std::size_t s = 0; s < is_used.size(); ++s)
        if (is_used[s]) purchase.delivery += problem.suppliers[s].delivery_of(counted[s]);
    purchase.total += purchase.delivery;
    // The search counts what could have been used, but was not bought, as paid for.
    Number all_worth;
    std::vector<Number> left(problem.demands.size());
    for (std::size_t o = 0; o < problem.offers.size(); ++o)
        left[problem.offers[o].item] += problem.offers[o].content * Number(purchase.packs[o]);
    for (std::size_t i = 0; i < left.size(); ++i) {
        LeftoverUse const use = problem.use(i);
        all_worth += use.worth * use.useful;
        purchase.worth += use.worth * std::min(left[i] - problem.demands[i], use.useful);
    }
    purchase.bound = Number(Integer(found.bound)) * market.unit - all_worth;
    return purchase;
}

inline Result<PurchasePlan> answer(PurchaseProblem const& problem, Market<Integer> const& market,
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

inline Result<PurchasePlan> cheapest_purchase(PurchaseProblem const& problem, std::uint64_t work) {
    auto const obstacles = purchase_obstacles(problem);
    if (!obstacles.empty()) return purchasing::refuse(obstacles.front());
    return purchasing::answer(problem, purchasing::to_market(problem), std::nullopt, work);
}

inline Result<PurchasePlan> cheapest_purchase_from(PurchaseProblem const& problem,
                                                   std::size_t supplier, std::uint64_t work) {
    auto const obstacles = purchase_obstacles(problem, supplier);
    if (!obstacles.empty()) {
        Flaw flaw = purchasing::refuse(obstacles.front()).value();
        flaw.what = fmt::format("supplier {} alone: {}", supplier, flaw.what);
        return Refused(std::move(flaw));
    }
    return purchasing::answer(problem, purchasing::to_market(problem), supplier, work);
}

inline Result<SinglePurchase> cheapest_single_purchase(PurchaseProblem const& problem,
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
