/// The bound that steers the search, by Lagrangian relaxation. The minimum of a supplier who is used is
/// given up for a worth per counted unit, and the rule that a fee is paid before anything is bought for
/// shares of the fee that the items bear. What is left falls apart into one cover per item. Every worth and
/// every share gives a true bound; a subgradient ascent looks for good ones.
///
///     fees and minimums of open suppliers      sum of fee + worth * minimum
///     those of undecided ones, where it pays   sum of min(0, fee + worth * minimum - shares)
///     items                                    sum of the cheapest bent cover
#pragma once

#include <groat/solve/purchase_cover.hpp>

namespace groat::purchasing {

template <class Whole> class Relaxation {
public:
    Relaxation(Market<Whole> const& market, Work& work)
        : market_(market), work_(work), cover_(market, work) {}

    /// What one bending says.
    struct Outcome {
        Whole value;              ///< the bound, in parts of the grid
        std::vector<Whole> packs; ///< by bid: the cheapest bent covers
        std::vector<Whole> slack; ///< by supplier: fee + worth * minimum - shares, where undecided
        std::vector<Whole> counted;  ///< by supplier, of `packs`
        std::vector<bool> is_bought; ///< by link, of `packs`
    };

    /// Nothing where an item cannot be covered from suppliers that are not closed.
    std::optional<Outcome> evaluate(std::vector<Standing> const& standing,
                                    Bending<Whole> const& bending);

    /// The best outcome of some rounds, with `bending` moved to where it was found. Stops early once the
    /// bound reaches `target`, a total that is already known.
    std::optional<Outcome> ascend(std::vector<Standing> const& standing, Bending<Whole>& bending,
                                  Whole const& target, int rounds);

    [[nodiscard]] Cover<Whole>& cover() { return cover_; }

private:
    void step_shares(std::vector<Standing> const& standing, Outcome const& outcome,
                     Whole const& stride, Bending<Whole>& bending) const;
    void step_worths(std::vector<Standing> const& standing, Outcome const& outcome,
                     Whole const& stride, Bending<Whole>& bending) const;

    Market<Whole> const& market_;
    Work& work_;
    Cover<Whole> cover_;
};

// ---------------------------------------------------------------------------------------------------

template <class Whole>
auto Relaxation<Whole>::evaluate(std::vector<Standing> const& standing,
                                 Bending<Whole> const& bending) -> std::optional<Outcome> {
    Outcome outcome;
    outcome.value = 0;
    outcome.packs.resize(market_.bids.size());
    outcome.slack.resize(market_.suppliers.size());
    outcome.counted.resize(market_.suppliers.size());
    outcome.is_bought.resize(market_.link_supplier.size());
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s) {
        Terms<Whole> const& terms = market_.suppliers[s];
        outcome.slack[s] = terms.fee * market_.grid + bending.worth[s] * terms.minimum;
        if (standing[s] == Standing::open) outcome.value += outcome.slack[s];
    }
    for (std::size_t link = 0; link < market_.link_supplier.size(); ++link)
        outcome.slack[market_.link_supplier[link]] -= bending.share[link];
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s)
        if (standing[s] == Standing::undecided && outcome.slack[s] < 0)
            outcome.value += outcome.slack[s];
    for (std::size_t i = 0; i < market_.items.size(); ++i) {
        auto const price = cover_.cheapest(i, standing, bending, outcome.packs);
        if (!price) return std::nullopt;
        outcome.value += price->bound;
    }
    for (std::size_t b = 0; b < market_.bids.size(); ++b) {
        if (outcome.packs[b] == 0) continue;
        Bid<Whole> const& bid = market_.bids[b];
        outcome.counted[bid.supplier] += bid.counted(outcome.packs[b]);
        outcome.is_bought[bid.link] = true;
    }
    return outcome;
}

template <class Whole>
void Relaxation<Whole>::step_shares(std::vector<Standing> const& standing, Outcome const& outcome,
                                    Whole const& stride, Bending<Whole>& bending) const {
    auto const direction = [&](std::size_t link) {
        std::size_t const s = market_.link_supplier[link];
        if (standing[s] != Standing::undecided) return 0;
        int const turn = (outcome.is_bought[link] ? 1 : 0) - (outcome.slack[s] < 0 ? 1 : 0);
        return turn < 0 && bending.share[link] == 0 ? 0 : turn;
    };
    Whole norm = 0;
    for (std::size_t link = 0; link < market_.link_supplier.size(); ++link)
        if (direction(link) != 0) norm += 1;
    if (norm == 0) return;
    Whole const step = stride / norm;
    for (std::size_t link = 0; link < market_.link_supplier.size(); ++link) {
        std::size_t const s = market_.link_supplier[link];
        Terms<Whole> const& terms = market_.suppliers[s];
        int const turn = direction(link);
        Whole const most = terms.fee * market_.grid + bending.worth[s] * terms.minimum;
        Whole& share = bending.share[link];
        if (turn > 0) share += step;
        if (turn < 0) share -= step;
        share = std::clamp(share, Whole(0), most);
    }
}

template <class Whole>
void Relaxation<Whole>::step_worths(std::vector<Standing> const& standing, Outcome const& outcome,
                                    Whole const& stride, Bending<Whole>& bending) const {
    std::vector<Whole> lack(market_.suppliers.size());
    Whole largest = 0;
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s) {
        Terms<Whole> const& terms = market_.suppliers[s];
        if (!terms.has_minimum() || standing[s] == Standing::closed) continue;
        bool const is_used = standing[s] == Standing::open || outcome.slack[s] < 0;
        lack[s] = (is_used ? terms.minimum : Whole(0)) - outcome.counted[s];
        if (lack[s] < 0 && bending.worth[s] == 0) lack[s] = 0;
        if (lack[s] > 0 && bending.worth[s] == terms.most_worth) lack[s] = 0;
        largest = std::max(largest, lack[s] < 0 ? Whole(-lack[s]) : lack[s]);
    }
    if (largest == 0) return;
    // Only the direction matters: small figures keep the sum of squares within bounds.
    Whole divisor = 1;
    while (largest / divisor > 4096) divisor *= 2;
    Whole norm = 0;
    for (Whole const& each : lack) norm += (each / divisor) * (each / divisor);
    if (norm == 0) return;
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s) {
        if (lack[s] == 0) continue;
        Whole const size = (lack[s] < 0 ? Whole(-lack[s]) : lack[s]) / divisor;
        Whole const step = scaled_down(stride, size, norm) / divisor;
        Whole& worth = bending.worth[s];
        worth += lack[s] < 0 ? Whole(-step) : step;
        worth = std::clamp(worth, Whole(0), market_.suppliers[s].most_worth);
    }
}

template <class Whole>
auto Relaxation<Whole>::ascend(std::vector<Standing> const& standing, Bending<Whole>& bending,
                               Whole const& target, int rounds) -> std::optional<Outcome> {
    std::optional<Outcome> best = evaluate(standing, bending);
    if (!best) return best;
    Bending<Whole> at = bending;
    Outcome outcome = *best;
    Whole rate = 64; // in 64ths of the whole distance to the target
    int stalled = 0;
    for (int round = 0; round < rounds && !work_.is_done(); ++round) {
        if (market_.round_up(best->value) >= target) break;
        Whole const distance = target * market_.grid - outcome.value;
        if (distance <= 0 || rate == 0) break;
        Whole const stride = scaled_down(distance, rate, Whole(64));
        Bending<Whole> const before = at;
        step_shares(standing, outcome, stride, at);
        step_worths(standing, outcome, stride, at);
        if (before.worth == at.worth && before.share == at.share) break;
        outcome = *evaluate(standing, at);
        if (outcome.value > best->value) {
            best = outcome;
            bending = at;
            stalled = 0;
        } else if (++stalled == 4) {
            // Back to the best and with shorter steps.
            rate /= 2;
            stalled = 0;
            at = bending;
            outcome = *best;
        }
    }
    return best;
}

} // namespace groat::purchasing
