/// Buying what is needed at the least outlay: how many packs of which offers, from which suppliers, so that
/// every demand is covered, every supplier who is used reaches the minimum order, and price, freight and
/// delivery together come to the least. The answer is the true minimum, or says how far from it at most:
/// a bound is proven for every answer, in exact arithmetic. The same problem always has the same answer;
/// of equally cheap plans it is the first that the search finds, which looks at suppliers and offers in the
/// order given.
#pragma once

#include <groat/solve/purchase_problem.hpp>
#include <groat/solve/purchase_search.hpp>

#include <fmt/format.h>

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

namespace purchasing {

Refused refuse(PurchaseObstacle const& obstacle);

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

Result<PurchasePlan> answer(PurchaseProblem const& problem, Market<Integer> const& market,
                            std::optional<std::size_t> only, std::uint64_t work);

} // namespace purchasing

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/solve/purchase.ipp>
#endif
