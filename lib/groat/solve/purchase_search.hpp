/// The search for the cheapest purchase: branch and bound over which suppliers are used, best bound first.
/// The relaxation of purchase_bound.hpp bounds a node and decides on suppliers whose use, or absence, would
/// cost more than is known to do; a node in which all are decided is closed by the beam of
/// purchase_beam.hpp, made wider each time that it leaves something off. What has not been looked at when
/// the work runs out still has its bound, so that the answer always says how far from best it may be.
#pragma once

#include <groat/solve/purchase_beam.hpp>
#include <groat/solve/purchase_bound.hpp>
#include <groat/solve/purchase_repair.hpp>

#include <memory>
#include <set>

namespace groat::purchasing {

template <class Whole> class Search {
public:
    Search(Market<Whole> const& market, Work& work)
        : market_(market),
          work_(work),
          relaxation_(market, work),
          beam_(market, relaxation_.cover(), work),
          best_total_(market.ceiling) {}

    struct Found {
        std::optional<std::vector<Whole>> packs; ///< by bid; nothing where no plan was found
        Whole total;
        Whole bound;
        /// Whether there is nothing left to look at; without a plan: that there is none.
        bool is_complete = false;
    };
    /// The cheapest purchase from suppliers that are not closed; of equally cheap ones the first found.
    Found run(std::vector<Standing> standing);

private:
    using Standings = std::vector<Standing>;
    struct Node {
        Whole bound;
        std::uint64_t number = 0;
        std::size_t width = 0; ///< of the last beam, 0 where there was none
        Whole value;           ///< of the relaxation at its bending, once there was a beam
        Standings standing;
        std::shared_ptr<Bending<Whole> const> bending;
        std::vector<bool> watched = {}; ///< suppliers whose minimum the beam keeps to
    };
    struct IsLater {
        bool operator()(Node const& a, Node const& b) const {
            return a.bound != b.bound ? a.bound < b.bound : a.number > b.number;
        }
    };
    using Outcome = typename Relaxation<Whole>::Outcome;

    void start(Standings& standing, Bending<Whole>& bending);
    std::optional<Whole> attempt(Standings const& standing, Bending<Whole> const& bending);
    Standings used(Standings const& standing, Outcome const& outcome) const;
    void improve(Standings const& standing, Standings at, Bending<Whole> const& bending);
    void consider(Basket<Whole> const& basket);
    void press(Standings const& standing, Bending<Whole> bending);
    void branch(Node node);
    void close(Node node);
    bool decide(Standings& standing, Outcome const& outcome) const;
    /// Of two who are the same supplier only one can be used.
    void open(Standings& standing, std::size_t supplier) const {
        if (market_.twin[supplier] != supplier) standing[market_.twin[supplier]] = Standing::closed;
        standing[supplier] = Standing::open;
    }
    void push(Node node) {
        if (node.bound >= best_total_) return;
        node.number = next_number_++;
        open_.insert(std::move(node));
    }

    Market<Whole> const& market_;
    Work& work_;
    Relaxation<Whole> relaxation_;
    Beam<Whole> beam_;
    Whole best_total_;
    std::optional<std::vector<Whole>> best_packs_;
    std::set<Node, IsLater> open_;
    std::set<Standings> attempted_;
    std::uint64_t next_number_ = 0;
};

// ---------------------------------------------------------------------------------------------------

template <class Whole> void Search<Whole>::consider(Basket<Whole> const& basket) {
    Whole const total = basket.total();
    if (total >= best_total_ || !basket.is_good()) return;
    best_total_ = total;
    best_packs_ = basket.packs();
}

/// The total of a plan from the open suppliers, if one is found quickly.
template <class Whole>
std::optional<Whole> Search<Whole>::attempt(Standings const& standing,
                                            Bending<Whole> const& bending) {
    if (!attempted_.insert(standing).second) return std::nullopt;
    auto const outcome = relaxation_.evaluate(standing, bending);
    if (!outcome) return std::nullopt;
    Basket<Whole> basket(market_, outcome->packs);
    if (!basket.fill_up()) return std::nullopt;
    basket.trim();
    consider(basket);
    return basket.total();
}

/// Plans in which the minimums are reached by raising the worth of what counts towards them, bit by bit, and
/// then saving wherever one of the covers met on the way is cheaper.
template <class Whole>
void Search<Whole>::press(Standings const& standing, Bending<Whole> bending) {
    std::vector<std::vector<Whole>> met;
    std::optional<Basket<Whole>> best;
    for (int round = 0; round < 24; ++round) {
        auto const outcome = relaxation_.evaluate(standing, bending);
        if (!outcome) return;
        met.push_back(outcome->packs);
        Basket<Whole> basket(market_, outcome->packs);
        if (basket.fill_up()) {
            basket.trim();
            if (!best || basket.total() < best->total()) best.emplace(basket);
        }
        bool has_pressed = false;
        for (std::size_t s = 0; s < market_.suppliers.size(); ++s) {
            Terms<Whole> const& terms = market_.suppliers[s];
            Whole& worth = bending.worth[s];
            if (standing[s] != Standing::open || outcome->counted[s] >= terms.minimum) continue;
            // By small steps at first: the least that will do is best.
            Whole const step =
                std::min(Whole(terms.most_worth - worth),
                         Whole((terms.most_worth >> 10) + (worth >> 5) + 1) << (round / 3));
            has_pressed = has_pressed || step > 0;
            worth += step;
        }
        if (!has_pressed) break;
    }
    if (!best) return;
    for (Whole before = best->total() + 1; best->total() < before;) {
        before = best->total();
        for (std::vector<Whole> const& packs : met) best->take_better(packs);
        best->trim();
    }
    consider(*best);
}

/// Open who is used by the outcome, closed who is not.
template <class Whole>
auto Search<Whole>::used(Standings const& standing, Outcome const& outcome) const -> Standings {
    Standings result(standing.size(), Standing::closed);
    for (std::size_t link = 0; link < market_.link_supplier.size(); ++link)
        if (outcome.is_bought[link]) open(result, market_.link_supplier[link]);
    for (std::size_t s = 0; s < standing.size(); ++s)
        if (standing[s] == Standing::open) result[s] = Standing::open;
    return result;
}

/// Opens and closes undecided suppliers one at a time, as long as that finds cheaper plans.
template <class Whole>
void Search<Whole>::improve(Standings const& standing, Standings at,
                            Bending<Whole> const& bending) {
    std::optional<Whole> total = attempt(at, bending);
    for (bool has_improved = true; has_improved;) {
        has_improved = false;
        for (std::size_t s = 0; s < at.size() && !work_.is_done(); ++s) {
            if (standing[s] != Standing::undecided) continue;
            Standings other = at;
            if (at[s] == Standing::open)
                other[s] = Standing::closed;
            else
                open(other, s);
            auto const other_total = attempt(other, bending);
            if (!other_total || (total && *other_total >= *total)) continue;
            total = other_total;
            at = std::move(other);
            has_improved = true;
        }
    }
}

/// Decides on suppliers without whom, or with whom, nothing better than the best can be had.
template <class Whole>
bool Search<Whole>::decide(Standings& standing, Outcome const& outcome) const {
    for (std::size_t s = 0; s < standing.size(); ++s) {
        if (standing[s] != Standing::undecided) continue;
        Whole const& slack = outcome.slack[s];
        Whole const other = outcome.value + (slack < 0 ? Whole(-slack) : slack);
        if (market_.round_up(other) < best_total_) continue;
        if (slack < 0)
            open(standing, s);
        else
            standing[s] = Standing::closed;
    }
    return std::find(standing.begin(), standing.end(), Standing::undecided) != standing.end();
}

template <class Whole> void Search<Whole>::branch(Node node) {
    Bending<Whole> bending = *node.bending;
    auto const outcome =
        relaxation_.ascend(node.standing, bending, best_total_, node.number == 0 ? 300 : 40);
    if (!outcome) return;
    node.bound = std::max(node.bound, market_.round_up(outcome->value));
    if (node.number == 0)
        improve(node.standing, used(node.standing, *outcome), bending);
    else
        attempt(used(node.standing, *outcome), bending);
    if (node.bound >= best_total_) return;
    node.bending = std::make_shared<Bending<Whole> const>(bending);
    if (!decide(node.standing, *outcome)) {
        push(std::move(node));
        return;
    }
    // The one with most at stake: its fee, and its minimum for what that is worth.
    std::size_t chosen = node.standing.size();
    Whole most = -1;
    for (std::size_t s = 0; s < node.standing.size(); ++s) {
        if (node.standing[s] != Standing::undecided) continue;
        Terms<Whole> const& terms = market_.suppliers[s];
        Whole const stake = terms.fee * market_.grid + bending.worth[s] * terms.minimum;
        if (stake <= most) continue;
        most = stake;
        chosen = s;
    }
    Node other = node;
    open(node.standing, chosen);
    other.standing[chosen] = Standing::closed;
    push(std::move(node));
    push(std::move(other));
}

template <class Whole> void Search<Whole>::close(Node node) {
    if (node.width == 0) {
        Bending<Whole> bending = *node.bending;
        auto const outcome = relaxation_.ascend(node.standing, bending, best_total_, 100);
        if (!outcome) return;
        node.bound = std::max(node.bound, market_.round_up(outcome->value));
        node.value = outcome->value;
        node.bending = std::make_shared<Bending<Whole> const>(bending);
        for (std::size_t s = 0; s < market_.suppliers.size(); ++s)
            node.watched.push_back(bending.worth[s] > 0 ||
                                   outcome->counted[s] < market_.suppliers[s].minimum);
        press(node.standing, bending);
        if (node.bound >= best_total_) return;
        node.width = 16;
    }
    node.width *= 4;
    auto const outcome = beam_.search(node.standing, *node.bending, node.watched, node.value,
                                      best_total_, node.width);
    std::optional<Whole> bound = outcome.left_off;
    if (outcome.packs) {
        Basket<Whole> basket(market_, *outcome.packs);
        bool is_short = false;
        for (std::size_t s = 0; s < market_.suppliers.size(); ++s) {
            if (!basket.is_short(s)) continue;
            node.watched[s] = true;
            is_short = true;
        }
        if (is_short) {
            // The best without that minimum is a bound; with it there is another search to make.
            if (!bound || outcome.bound < *bound) bound = outcome.bound;
            node.width /= 4;
            if (basket.fill_up()) basket.trim();
        }
        consider(basket);
    }
    if (!bound) return;
    node.bound = std::max(node.bound, market_.round_up(*bound));
    push(std::move(node));
}

template <class Whole> auto Search<Whole>::run(std::vector<Standing> standing) -> Found {
    Bending<Whole> bending;
    bending.worth.resize(market_.suppliers.size());
    std::vector<std::size_t> links(market_.suppliers.size());
    for (std::size_t const s : market_.link_supplier) ++links[s];
    for (std::size_t const s : market_.link_supplier)
        bending.share.push_back(market_.suppliers[s].fee * market_.grid /
                                static_cast<std::int64_t>(links[s]));
    Standings all = standing;
    for (std::size_t s = 0; s < standing.size(); ++s) {
        Terms<Whole> const& terms = market_.suppliers[s];
        if (standing[s] == Standing::undecided && terms.fee == 0 && !terms.has_minimum())
            open(standing, s);
        if (standing[s] == Standing::undecided && market_.twin[s] >= s) open(all, s);
    }
    improve(standing, all, bending);
    push({0, 0, 0, 0, standing, std::make_shared<Bending<Whole> const>(bending)});
    // The first node is looked at in any case: without it there is no bound.
    for (bool is_first = true;
         !open_.empty() && open_.begin()->bound < best_total_ && (is_first || !work_.is_done());
         is_first = false) {
        Node node = std::move(open_.extract(open_.begin()).value());
        bool const is_undecided = std::find(node.standing.begin(), node.standing.end(),
                                            Standing::undecided) != node.standing.end();
        if (is_undecided)
            branch(std::move(node));
        else
            close(std::move(node));
    }
    if (best_packs_) {
        // Of plans that come to the same the one that asks less today.
        Basket<Whole> basket(market_, *best_packs_);
        basket.trim();
        best_packs_ = basket.packs();
        best_total_ = basket.total();
    }
    Found found{best_packs_, best_total_, best_total_, true};
    if (!open_.empty() && open_.begin()->bound < best_total_) {
        found.bound = open_.begin()->bound;
        found.is_complete = false;
    }
    return found;
}

} // namespace groat::purchasing
