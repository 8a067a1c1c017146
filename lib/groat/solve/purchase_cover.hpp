/// Covering the demand of one item from its bids, at prices that the search has bent: each unit counted
/// towards a supplier's minimum is credited with its worth, and a supplier not yet decided on charges the
/// item a share of its fee. By depth-first search over the bids, the cheapest by content first, against the
/// bound that divisible packs give. What may stay short of the demand does so at its price, after all bids. Exact as long as it is not cut short, and a true bound even then.
#pragma once

#include <groat/solve/purchase_market.hpp>

#include <optional>
#include <vector>

namespace groat::purchasing {

/// Whether the search has decided on a supplier.
enum class Standing { undecided, open, closed };

/// What bends the prices, in parts of the grid: the worth of a counted unit by supplier, and the share of
/// a fee by link.
template <class Whole> struct Bending {
    std::vector<Whole> worth;
    std::vector<Whole> share;
};

/// The steps of work that may still be done.
struct Work {
    std::uint64_t left = 0;
    void take(std::uint64_t steps) { left -= std::min(left, steps); }
    [[nodiscard]] bool is_done() const { return left == 0; }
};

template <class Whole> class Cover {
public:
    Cover(Market<Whole> const& market, Work& work) : market_(market), work_(work) {}

    struct Price {
        Whole bound; ///< no cover's bent price is below
        Whole
            paid; ///< the bent price of the packs found: the same, unless the search was cut short
    };
    /// The cheapest cover of an item, with its packs written to `packs` (of all bids; only those of the
    /// item change). Nothing where no packs cover.
    std::optional<Price> cheapest(std::size_t item, std::vector<Standing> const& standing,
                                  Bending<Whole> const& bending, std::vector<Whole>& packs);

    /// Calls `take(bent price, packs by bid of the item)` for each cover from open suppliers whose bent
    /// price is at most `limit`, which `take` may lower. Bids that are `free` can be added to elsewhere, so
    /// covers that could spare a pack of one are left out. False where it was cut short.
    template <class Take>
    bool each_cover(std::size_t item, std::vector<Standing> const& standing,
                    Bending<Whole> const& bending, std::vector<bool> const& free, Whole& limit,
                    std::uint64_t most_steps, Take&& take);

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    static constexpr std::uint64_t most_steps_each = 20'000;

    /// A bid in the order of the search, and where the search stands with it.
    struct Level {
        std::size_t bid = 0;
        std::size_t prices = 0;    ///< where its bent prices stand
        std::size_t before = none; ///< the nearest earlier level of the same supplier
        Whole charge;              ///< for the first pack, unless an earlier level has paid it
        Whole alone;               ///< bound for covering the whole demand by this bid
        Whole least;               ///< bound for covering the whole demand from here on
        Whole supply;              ///< the most content from here on
        Whole missing;
        Whole paid;
        Whole packs;
        Whole most; ///< of use here
        std::size_t tier = 0;
    };

    bool lay_out(std::size_t index, std::vector<Standing> const& standing,
                 Bending<Whole> const& bending, bool with_shares);
    /// What it costs at least to cover what is missing from this level on; after the last, what it costs to
    /// leave it.
    [[nodiscard]] Whole bound(std::size_t at, Whole const& missing) const {
        if (missing <= 0) return Whole(0);
        return at == levels_.size() ? Whole(missing * short_price_)
                                    : scaled_down(missing, levels_[at].least, demand_);
    }
    /// The same for the whole demand.
    [[nodiscard]] Whole least_from(std::size_t at) const {
        return at == levels_.size() ? Whole(demand_ * short_price_) : levels_[at].least;
    }
    /// The most that can be missing before this level.
    [[nodiscard]] Whole const& supply_from(std::size_t at) const {
        return at == levels_.size() ? most_short_ : levels_[at].supply;
    }
    [[nodiscard]] bool has_paid(std::size_t at) const {
        for (std::size_t up = levels_[at].before; up != none; up = levels_[up].before)
            if (levels_[up].packs > 0) return true;
        return false;
    }
    void enter(std::size_t at, Whole const& missing, Whole const& paid, std::size_t tier) {
        levels_[at].missing = missing;
        levels_[at].paid = paid;
        levels_[at].packs = 0;
        levels_[at].tier = tier;
    }
    bool fewer(std::size_t at, Whole const* best, Whole& missing, Whole& paid);
    bool more(std::size_t at, bool is_first, Whole const& limit, Whole& missing, Whole& paid);

    Market<Whole> const& market_;
    Work& work_;
    Whole demand_;
    Whole most_short_;
    Whole short_price_; ///< in parts of the grid
    std::uint64_t steps_ = 0;
    std::uint64_t most_steps_ = 0;
    std::vector<Level> levels_;
    std::vector<Whole> prices_;
    std::vector<Whole> chosen_;
};

// ---------------------------------------------------------------------------------------------------

/// Sorts the bids that may be used and computes the bounds; false where they cannot cover.
template <class Whole>
bool Cover<Whole>::lay_out(std::size_t index, std::vector<Standing> const& standing,
                           Bending<Whole> const& bending, bool with_shares) {
    Item<Whole> const& item = market_.items[index];
    demand_ = item.demand;
    most_short_ = item.most_short;
    short_price_ = item.short_price * market_.grid;
    steps_ = 0;
    levels_.clear();
    prices_.clear();
    for (std::size_t b = item.first_bid; b < item.end_bid; ++b) {
        Bid<Whole> const& bid = market_.bids[b];
        Standing const state = standing[bid.supplier];
        if (state == Standing::closed || (!with_shares && state == Standing::undecided)) continue;
        Level level{};
        level.bid = b;
        level.prices = prices_.size();
        Whole const& worth = bending.worth[bid.supplier];
        for (Tier<Whole> const& tier : bid.tiers)
            prices_.push_back(tier.cost * market_.grid - worth * tier.counted);
        Whole const least = *std::min_element(
            prices_.begin() + static_cast<std::ptrdiff_t>(level.prices), prices_.end());
        level.charge =
            with_shares && state == Standing::undecided ? bending.share[bid.link] : Whole(0);
        level.alone = scaled_down(demand_, least, bid.content) + level.charge;
        levels_.push_back(level);
    }
    std::stable_sort(levels_.begin(), levels_.end(),
                     [](Level const& a, Level const& b) { return a.alone < b.alone; });
    for (std::size_t at = 0; at < levels_.size(); ++at) {
        std::size_t const link = market_.bids[levels_[at].bid].link;
        for (std::size_t up = at; up-- > 0 && levels_[at].before == none;)
            if (market_.bids[levels_[up].bid].link == link) levels_[at].before = up;
    }
    Whole supply = most_short_;
    Whole least = demand_ * short_price_;
    bool is_bounded = most_short_ > 0;
    for (std::size_t at = levels_.size(); at-- > 0;) {
        Level& level = levels_[at];
        // A later bid of a supplier may find the charge paid.
        Whole const alone = level.before == none ? level.alone : Whole(level.alone - level.charge);
        if (!is_bounded || alone < least) least = alone;
        is_bounded = true;
        supply += market_.bids[level.bid].content * market_.bids[level.bid].most;
        level.least = least;
        level.supply = supply;
    }
    return demand_ <= supply;
}

/// The next number of packs that may lead below `best`: from the last tier to the first, in a tier from
/// many packs to few, and none at the end. False when there is no more.
template <class Whole>
bool Cover<Whole>::fewer(std::size_t at, Whole const* best, Whole& missing, Whole& paid) {
    Level& level = levels_[at];
    Bid<Whole> const& bid = market_.bids[level.bid];
    Whole const needed = (level.missing + bid.content - 1) / bid.content;
    for (;;) {
        if (level.tier < bid.tiers.size() && level.packs > bid.tiers[level.tier].from) {
            level.packs -= 1;
        } else if (level.tier > 0) {
            Tier<Whole> const& tier = bid.tiers[--level.tier];
            level.packs = std::max(tier.from, std::min(tier.to, needed));
        } else if (level.packs > 0) {
            level.packs = 0;
        } else {
            return false;
        }
        if (++steps_ > most_steps_ && best != nullptr) return false;
        missing = level.missing - level.packs * bid.content;
        bool const covers = missing <= 0;
        // What comes after this one holds even fewer packs.
        if (!covers && missing > supply_from(at + 1)) return false;
        Whole const& price = prices_[level.prices + level.tier];
        paid = level.paid + price * level.packs;
        if (level.packs > 0 && level.charge > 0 && !has_paid(at)) paid += level.charge;
        if (best == nullptr || paid + bound(at + 1, missing) < *best) return true;
        // Where a pack is worth its price against the bids to come, fewer packs only cost more.
        if (!covers && level.packs > 0 &&
            is_ratio_at_most(price, bid.content, least_from(at + 1), demand_))
            level.packs = bid.tiers[level.tier].from;
    }
}

template <class Whole>
auto Cover<Whole>::cheapest(std::size_t index, std::vector<Standing> const& standing,
                            Bending<Whole> const& bending, std::vector<Whole>& packs)
    -> std::optional<Price> {
    Item<Whole> const& item = market_.items[index];
    if (item.demand == 0) {
        for (std::size_t b = item.first_bid; b < item.end_bid; ++b) packs[b] = 0;
        return Price{0, 0};
    }
    if (!lay_out(index, standing, bending, true)) {
        work_.take(1);
        return std::nullopt;
    }
    if (levels_.empty()) return Price{bound(0, demand_), bound(0, demand_)};
    std::optional<Whole> best;
    Whole const least = bound(0, demand_);
    chosen_.resize(levels_.size());
    enter(0, demand_, 0, market_.bids[levels_[0].bid].tiers.size());
    most_steps_ = most_steps_each;
    std::size_t at = 0;
    Whole missing;
    Whole paid;
    for (;;) {
        if (!fewer(at, best ? &*best : nullptr, missing, paid)) {
            if (at == 0) break;
            --at;
            continue;
        }
        if (missing > 0 && at + 1 < levels_.size()) {
            ++at;
            enter(at, missing, paid, market_.bids[levels_[at].bid].tiers.size());
            continue;
        }
        paid += bound(levels_.size(), missing);
        best = paid;
        for (std::size_t up = 0; up < levels_.size(); ++up)
            chosen_[up] = up <= at ? levels_[up].packs : Whole(0);
        if (paid <= least) break;
    }
    work_.take(steps_ + levels_.size());
    for (std::size_t b = item.first_bid; b < item.end_bid; ++b) packs[b] = 0;
    for (std::size_t up = 0; up < levels_.size(); ++up) packs[levels_[up].bid] = chosen_[up];
    return Price{steps_ > most_steps_ ? least : *best, *best};
}

/// The next number of packs, rising from none, that may lead to `limit` or below.
template <class Whole>
bool Cover<Whole>::more(std::size_t at, bool is_first, Whole const& limit, Whole& missing,
                        Whole& paid) {
    Level& level = levels_[at];
    Bid<Whole> const& bid = market_.bids[level.bid];
    for (;;) {
        if (!is_first) {
            if (level.packs >= level.most) return false;
            level.packs += 1;
            if (level.packs > bid.tiers[level.tier].to) ++level.tier;
        }
        is_first = false;
        if (++steps_ > most_steps_) return false;
        missing = level.missing - level.packs * bid.content;
        bool const covers = missing <= 0;
        if (!covers && missing > supply_from(at + 1)) {
            // Not before enough packs to leave what the others can supply.
            Whole const open = missing - supply_from(at + 1);
            Whole const packs = level.packs + (open + bid.content - 1) / bid.content - 1;
            if (packs >= level.most) return false;
            level.packs = packs;
            while (level.packs > bid.tiers[level.tier].to) ++level.tier;
            continue;
        }
        Whole const& price = prices_[level.prices + level.tier];
        paid = level.paid + price * level.packs;
        if (paid + bound(at + 1, missing) <= limit) return true;
        // Where a pack costs more than it saves of the bids to come, more packs only cost more.
        if (level.packs > 0 &&
            (covers || is_ratio_at_most(least_from(at + 1), demand_, price, bid.content)))
            level.packs = bid.tiers[level.tier].to;
    }
}

template <class Whole>
template <class Take>
bool Cover<Whole>::each_cover(std::size_t index, std::vector<Standing> const& standing,
                              Bending<Whole> const& bending, std::vector<bool> const& free,
                              Whole& limit, std::uint64_t most_steps, Take&& take) {
    Item<Whole> const& item = market_.items[index];
    std::vector<Whole> packs(item.end_bid - item.first_bid);
    bool const can_cover = lay_out(index, standing, bending, false);
    if (!can_cover || levels_.empty()) {
        if (can_cover) take(bound(0, demand_), packs);
        return true;
    }
    most_steps_ = most_steps;
    // Bounds divide by the demand; without one there is nothing to bound.
    bool const is_needed = demand_ > 0;
    if (!is_needed) demand_ = 1;
    auto const enter_at = [&](std::size_t at, Whole const& missing, Whole const& paid) {
        enter(at, missing, paid, 0);
        Bid<Whole> const& bid = market_.bids[levels_[at].bid];
        Whole const needed =
            missing <= 0 ? Whole(0) : Whole((missing + bid.content - 1) / bid.content);
        levels_[at].most = free[levels_[at].bid] ? std::min(needed, bid.most) : bid.most;
    };
    auto const can_spare = [&](Whole const& missing) {
        return std::any_of(levels_.begin(), levels_.end(), [&](Level const& level) {
            return free[level.bid] && level.packs > 0 &&
                   missing + market_.bids[level.bid].content <= 0;
        });
    };
    std::size_t at = 0;
    enter_at(0, is_needed ? demand_ : Whole(0), 0);
    bool is_first = true;
    Whole missing;
    Whole paid;
    for (;;) {
        if (!more(at, is_first, limit, missing, paid)) {
            if (at == 0) break;
            --at;
            is_first = false;
            continue;
        }
        if (at + 1 < levels_.size()) {
            enter_at(++at, missing, paid);
            is_first = true;
            continue;
        }
        is_first = false;
        if (can_spare(missing)) continue;
        for (Level const& level : levels_) packs[level.bid - item.first_bid] = level.packs;
        take(Whole(paid + bound(levels_.size(), missing)), packs);
    }
    work_.take(steps_ + levels_.size());
    return steps_ <= most_steps;
}

} // namespace groat::purchasing
