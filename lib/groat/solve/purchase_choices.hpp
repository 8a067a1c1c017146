/// Which covers of each item come into question once it is settled who is used. Only what may lead below a
/// known total is listed, and of two covers not the one that is no cheaper and helps no minimum more. What every
/// cover of an item counts is taken for granted, and a minimum that is met by that binds no longer. Packs
/// bought only to reach a minimum are left to purchase_padding.hpp where they can be.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/solve/purchase_cover.hpp>
#include <groat/solve/purchase_padding.hpp>

#include <iterator>
#include <map>
#include <span>

namespace groat::purchasing {

/// A cover of an item.
template <class Whole> struct Plan {
    Whole excess; ///< what it adds to the relaxation's bound, in parts of the grid
    Whole cost;
    std::vector<Whole>
        counted; ///< by supplier whose minimum may bind, beyond what is taken for granted
    std::vector<Whole> packs; ///< by bid of the item
};

/// The plans of one item, the least excess first.
template <class Whole> struct Group {
    std::size_t item = 0;
    std::vector<Plan<Whole>> plans;
};

template <class Whole> class Choices {
public:
    Choices(Market<Whole> const& market, Cover<Whole>& cover, Work& work);

    /// Lists the covers from the open suppliers; none other may be undecided. At most `most_plans` are
    /// listed for an item. `value` is what the relaxation says for this bending. Only the minimums of
    /// suppliers who are `watched` are kept to. False where no choice of covers leads to a total below
    /// `target`, other than what was left off.
    bool list(std::vector<Standing> const& standing, Bending<Whole> const& bending,
              std::vector<bool> const& watched, Whole const& value, Whole const& target,
              std::size_t most_plans);

    [[nodiscard]] std::vector<Group<Whole>> const& groups() const { return groups_; }
    /// The suppliers whose minimum may bind, and what they lack of it, whichever covers are taken.
    [[nodiscard]] std::vector<std::size_t> const& binding() const { return binding_; }
    [[nodiscard]] std::vector<Whole> const& lacking() const { return lacking_; }
    /// The greatest bound that is still of interest, in parts of the grid.
    [[nodiscard]] Whole const& limit() const { return limit_; }
    [[nodiscard]] Padding<Whole> const& padding(std::size_t at) const {
        return paddings_[binding_[at]];
    }

    /// Notes the bound of plans that are not looked at.
    void leave_off(Whole const& bound) {
        if (bound <= limit_ && (!left_off_ || bound < *left_off_)) left_off_ = bound;
    }
    [[nodiscard]] std::optional<Whole> const& left_off() const { return left_off_; }

private:
    void list(Group<Whole>& group, std::vector<Standing> const& standing,
              Bending<Whole> const& bending, std::size_t most_plans);
    void thin(std::vector<Plan<Whole>>& plans);
    bool settle(Bending<Whole> const& bending);
    bool drop_met(Bending<Whole> const& bending);

    Market<Whole> const& market_;
    Cover<Whole>& cover_;
    Work& work_;
    std::vector<Padding<Whole>> paddings_; ///< by supplier
    std::vector<bool> free_;           ///< by bid: whether covers need not look at needless packs
    std::vector<Group<Whole>> groups_; ///< by item
    std::vector<std::size_t> binding_;
    std::vector<Whole> lacking_;
    Whole start_; ///< the bound, whichever covers are taken
    Whole limit_;
    std::optional<Whole> left_off_;
};

// ---------------------------------------------------------------------------------------------------

template <class Whole>
Choices<Whole>::Choices(Market<Whole> const& market, Cover<Whole>& cover, Work& work)
    : market_(market), cover_(cover), work_(work) {
    for (std::size_t s = 0; s < market.suppliers.size(); ++s) {
        paddings_.emplace_back(market, s);
        work_.take(paddings_.back().steps() / 8);
    }
    for (Bid<Whole> const& bid : market.bids) {
        // More packs than needed: for a later break, for a minimum, or for nothing.
        bool const is_padding =
            market.suppliers[bid.supplier].has_minimum() && bid.tiers.front().counted > 0;
        free_.push_back(
            bid.tiers.size() == 1 &&
            (!is_padding || (paddings_[bid.supplier].is_known() && Padding<Whole>::is_free(bid))));
    }
}

/// Leaves off plans that another is as good as: no dearer, and of no less help with each minimum. Sorts the
/// rest by what they add to the bound.
template <class Whole> void Choices<Whole>::thin(std::vector<Plan<Whole>>& plans) {
    std::vector<std::size_t> active; // binding suppliers of whom any plan buys
    for (std::size_t k = 0; k < binding_.size(); ++k)
        if (std::any_of(plans.begin(), plans.end(),
                        [&](Plan<Whole> const& plan) { return plan.counted[k] > 0; }))
            active.push_back(k);
    std::stable_sort(plans.begin(), plans.end(), [](Plan<Whole> const& a, Plan<Whole> const& b) {
        return a.cost != b.cost ? a.cost < b.cost : a.excess < b.excess;
    });
    auto const help = [&](Plan<Whole> const& plan, std::size_t n) {
        return n < active.size() ? std::min(plan.counted[active[n]], lacking_[active[n]])
                                 : Whole(0);
    };
    std::size_t kept = 0;
    std::uint64_t compared = 8 * plans.size();
    std::map<Whole, Whole>
        steps; // help with the first minimum, and the most with the second beside it
    auto const is_needless = [&](Plan<Whole> const& plan) {
        if (active.size() > 2) {
            compared += kept;
            return std::any_of(plans.begin(), plans.begin() + static_cast<std::ptrdiff_t>(kept),
                               [&](Plan<Whole> const& other) {
                                   for (std::size_t n = 0; n < active.size(); ++n)
                                       if (help(other, n) < help(plan, n)) return false;
                                   return true;
                               });
        }
        Whole const first = help(plan, 0);
        Whole const second = help(plan, 1);
        auto const above = steps.lower_bound(first);
        if (above != steps.end() && above->second >= second) return true;
        auto from = above != steps.end() && above->first == first ? std::next(above) : above;
        while (from != steps.begin() && std::prev(from)->second <= second)
            from = steps.erase(std::prev(from));
        steps[first] = second;
        return false;
    };
    for (std::size_t at = 0; at < plans.size(); ++at) {
        if (is_needless(plans[at])) continue;
        if (kept != at) plans[kept] = std::move(plans[at]);
        ++kept;
    }
    work_.take(compared);
    plans.resize(kept);
    std::stable_sort(plans.begin(), plans.end(), [](Plan<Whole> const& a, Plan<Whole> const& b) {
        return a.excess != b.excess ? a.excess < b.excess : a.cost < b.cost;
    });
}

template <class Whole>
void Choices<Whole>::list(Group<Whole>& group, std::vector<Standing> const& standing,
                          Bending<Whole> const& bending, std::size_t most_plans) {
    Item<Whole> const& item = market_.items[group.item];
    std::vector<Whole> cheapest(market_.bids.size());
    auto const price = cover_.cheapest(group.item, standing, bending, cheapest);
    if (!price) return;
    Whole const& least = price->bound;
    Whole limit;
    std::vector<Plan<Whole>>& plans = group.plans;
    auto const cut = [&] {
        thin(plans);
        if (plans.size() <= most_plans) return;
        // Of many that add the same, as when only a minimum is left to reach, a sample is kept: which of
        // them fits depends on the other items.
        Whole const excess = plans[most_plans].excess;
        limit = least + excess;
        leave_off(start_ + excess);
        auto const ties = std::equal_range(
            plans.begin(), plans.end(), plans[most_plans],
            [](Plan<Whole> const& x, Plan<Whole> const& y) { return x.excess < y.excess; });
        auto const first = static_cast<std::size_t>(ties.first - plans.begin());
        auto const count = static_cast<std::size_t>(ties.second - ties.first);
        for (std::size_t n = 0; n < most_plans - first; ++n) {
            std::size_t const from = n * count / (most_plans - first);
            if (from > n) plans[first + n] = std::move(plans[first + from]);
        }
        plans.resize(most_plans);
    };
    auto const take = [&](Whole const& bent, std::vector<Whole> const& packs) {
        Plan<Whole> plan{bent - least, 0, std::vector<Whole>(binding_.size()), packs};
        Whole missing = item.demand;
        for (std::size_t b = item.first_bid; b < item.end_bid; ++b) {
            Bid<Whole> const& bid = market_.bids[b];
            Whole const& count = packs[b - item.first_bid];
            if (count == 0) continue;
            plan.cost += bid.cost(count);
            missing -= count * bid.content;
            auto const known = std::find(binding_.begin(), binding_.end(), bid.supplier);
            if (known != binding_.end())
                plan.counted[static_cast<std::size_t>(known - binding_.begin())] +=
                    bid.counted(count);
        }
        plan.cost += item.shortage(missing);
        plans.push_back(std::move(plan));
        if (plans.size() >= 4 * most_plans) cut();
    };
    bool const has_choice =
        price->paid != least ||
        std::any_of(market_.bids.begin() + static_cast<std::ptrdiff_t>(item.first_bid),
                    market_.bids.begin() + static_cast<std::ptrdiff_t>(item.end_bid),
                    [&](Bid<Whole> const& bid) {
                        return std::find(binding_.begin(), binding_.end(), bid.supplier) !=
                               binding_.end();
                    });
    // What adds little to the bound comes first; how much is too much shows on the way.
    Whole const all = limit_ - start_;
    for (int shift = 14; has_choice && shift >= 0; shift -= 2) {
        std::vector<Plan<Whole>> before = std::exchange(plans, {});
        limit = least + (all >> shift);
        if (!cover_.each_cover(group.item, standing, bending, free_, limit, 2000 * most_plans,
                               take)) {
            // What came before is all that adds so little; what came now is some of what adds more.
            leave_off(shift == 14 ? start_ : Whole(start_ + (all >> (shift + 2))));
            std::move(before.begin(), before.end(), std::back_inserter(plans));
            break;
        }
        cut();
        if (plans.size() < most_plans) continue;
        if (shift > 0) leave_off(start_ + (all >> shift));
        break;
    }
    if (plans.empty())
        take(price->paid, {cheapest.begin() + static_cast<std::ptrdiff_t>(item.first_bid),
                           cheapest.begin() + static_cast<std::ptrdiff_t>(item.end_bid)});
    cut();
}

/// Takes what every plan of an item counts, and adds to the bound, for granted. Suppliers whose minimum is
/// met by that no longer bind. True where that may have changed what is as good as what.
template <class Whole> bool Choices<Whole>::drop_met(Bending<Whole> const& bending) {
    for (Group<Whole>& group : groups_) {
        Whole const excess = group.plans.front().excess;
        start_ += excess;
        for (Plan<Whole>& plan : group.plans) plan.excess -= excess;
        for (std::size_t k = 0; k < binding_.size(); ++k) {
            Whole least = group.plans.front().counted[k];
            for (Plan<Whole> const& plan : group.plans) least = std::min(least, plan.counted[k]);
            lacking_[k] -= least;
            for (Plan<Whole>& plan : group.plans) plan.counted[k] -= least;
        }
    }
    bool has_dropped = false;
    for (std::size_t k = binding_.size(); k-- > 0;) {
        if (lacking_[k] > 0) continue;
        Whole const& worth = bending.worth[binding_[k]];
        auto const at = static_cast<std::ptrdiff_t>(k);
        start_ -= worth * lacking_[k];
        for (Group<Whole>& group : groups_) {
            for (Plan<Whole>& plan : group.plans) {
                plan.excess += worth * plan.counted[k];
                plan.counted.erase(plan.counted.begin() + at);
            }
        }
        binding_.erase(binding_.begin() + at);
        lacking_.erase(lacking_.begin() + at);
        has_dropped = true;
    }
    return has_dropped;
}

/// False where no choice of covers can be of interest.
template <class Whole> bool Choices<Whole>::settle(Bending<Whole> const& bending) {
    for (bool has_changed = true; has_changed;) {
        for (Group<Whole> const& group : groups_)
            if (group.plans.empty()) return false;
        has_changed = drop_met(bending);
        for (Group<Whole>& group : groups_) {
            std::size_t const before = group.plans.size();
            thin(group.plans);
            std::erase_if(group.plans,
                          [&](Plan<Whole> const& plan) { return start_ + plan.excess > limit_; });
            has_changed = has_changed || group.plans.size() != before;
        }
    }
    return start_ <= limit_;
}

template <class Whole>
bool Choices<Whole>::list(std::vector<Standing> const& standing, Bending<Whole> const& bending,
                          std::vector<bool> const& watched, Whole const& value, Whole const& target,
                          std::size_t most_plans) {
    limit_ = (target - market_.step) * market_.grid;
    left_off_.reset();
    start_ = value;
    binding_.clear();
    lacking_.clear();
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s) {
        if (!watched[s] || standing[s] != Standing::open || !market_.suppliers[s].has_minimum())
            continue;
        binding_.push_back(s);
        lacking_.push_back(market_.suppliers[s].minimum);
    }
    groups_.assign(market_.items.size(), {});
    if (start_ > limit_) return false;
    for (std::size_t i = 0; i < groups_.size(); ++i) {
        groups_[i].item = i;
        list(groups_[i], standing, bending, most_plans);
        if (groups_[i].plans.empty()) return false;
    }
    return settle(bending);
}

} // namespace groat::purchasing
