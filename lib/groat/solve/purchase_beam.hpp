/// The last step of a purchase: which covers to take once it is settled who is used. The items are taken
/// one after the other; a label is a choice for those taken so far, known by what it has spent and what each
/// supplier still lacks of the minimum. Labels that lack the same are one, and only the most promising are kept.
/// Where none had to be left off, the outcome is the true minimum; otherwise the best that was left off
/// bounds it.
///
/// What the items to come cost at least is a convex function of what is lacking. It is known by its slopes:
/// for each vector of worths, the items' cheapest bent covers plus worth * lacking. Each step looks for
/// worths that suit the labels at hand.
#pragma once

#include <groat/solve/purchase_choices.hpp>

#include <bit>
#include <tuple>

namespace groat::purchasing {

template <class Whole> class Beam {
public:
    Beam(Market<Whole> const& market, Cover<Whole>& cover, Work& work)
        : market_(market), work_(work), choices_(market, cover, work) {}

    struct Outcome {
        std::optional<std::vector<Whole>>
            packs;   ///< of the best plan found that is below the target
        Whole bound; ///< what `packs` cost, in parts of the grid
        /// Every plan is no better than `packs` or the target, or costs this or more, in parts of the grid.
        /// Nothing where none was left off.
        std::optional<Whole> left_off;
    };

    /// Plans from the open suppliers that cost less than `target`; none other may be undecided. At most
    /// `width` labels are kept, and a share of that of the covers of an item. `value` is what the
    /// relaxation says for this bending. The minimums of suppliers who are not `watched` are not kept to:
    /// the fewer there are, the less work it is.
    Outcome search(std::vector<Standing> const& standing, Bending<Whole> const& bending,
                   std::vector<bool> const& watched, Whole const& value, Whole const& target,
                   std::size_t width);

private:
    struct Label {
        Whole bound; ///< of what it can lead to, in parts of the grid
        Whole spent;
        std::size_t lacking = 0; ///< where in the pool its figures stand
        std::uint32_t parent = 0;
        std::uint32_t plan = 0;
    };
    struct Labels {
        std::vector<Label> all;
        std::vector<Whole> pool;
    };
    struct Slope {
        std::vector<Whole> worth; ///< by supplier whose minimum may bind
        Whole base; ///< what the groups to come cost at least, when nothing is lacking
    };
    using Groups = std::span<std::size_t const>; ///< indices of groups

    std::span<Whole const> lacking(Labels const& labels, Label const& label) const {
        return {labels.pool.data() + label.lacking, choices_.binding().size()};
    }
    Whole bound(Slope const& slope, Whole const& spent, std::span<Whole const> lacks) const {
        Whole result = spent * market_.grid + slope.base;
        for (std::size_t k = 0; k < lacks.size(); ++k) result += slope.worth[k] * lacks[k];
        return result;
    }
    Whole base(std::vector<Whole> const& worth, Groups to_come, std::vector<Whole>& counted) const;
    Slope steepen(Slope const& from, Whole const& spent, std::span<Whole const> lacks,
                  Groups to_come) const;
    void sharpen(Labels& labels, Groups to_come, std::size_t rounds);
    Labels extend(Labels const& from, std::size_t group, Groups to_come, std::size_t width);
    void select(Labels& labels, std::size_t width);
    std::vector<std::size_t> order() const;
    Whole most_worth(std::size_t at) const;

    Market<Whole> const& market_;
    Work& work_;
    Choices<Whole> choices_;
    std::vector<Slope> slopes_;
};

// ---------------------------------------------------------------------------------------------------

/// The sum of the cheapest bent covers, and what they count.
template <class Whole>
Whole Beam<Whole>::base(std::vector<Whole> const& worth, Groups to_come,
                        std::vector<Whole>& counted) const {
    Whole total = 0;
    std::fill(counted.begin(), counted.end(), Whole(0));
    for (std::size_t const g : to_come) {
        Plan<Whole> const* cheapest = nullptr;
        Whole least = 0;
        for (Plan<Whole> const& plan : choices_.groups()[g].plans) {
            Whole bent = plan.cost * market_.grid;
            for (std::size_t k = 0; k < worth.size(); ++k) bent -= worth[k] * plan.counted[k];
            if (cheapest != nullptr && bent >= least) continue;
            cheapest = &plan;
            least = bent;
        }
        total += least;
        for (std::size_t k = 0; k < worth.size(); ++k) counted[k] += cheapest->counted[k];
    }
    return total;
}

/// Beyond this a slope would bound nothing (padding would cost less), or a product might not fit.
template <class Whole> Whole Beam<Whole>::most_worth(std::size_t at) const {
    Whole const most = market_.suppliers[choices_.binding()[at]].most_worth * 16;
    Padding<Whole> const& padding = choices_.padding(at);
    return padding.is_known() ? std::min(most, padding.most_worth()) : most;
}

/// A slope that bounds a label better than the one given, by subgradient ascent.
template <class Whole>
auto Beam<Whole>::steepen(Slope const& from, Whole const& spent, std::span<Whole const> lacks,
                          Groups to_come) const -> Slope {
    std::size_t const size = lacks.size();
    std::vector<Whole> counted(size);
    std::vector<Whole> lack(size);
    Slope best = from;
    Whole best_bound = bound(from, spent, lacks);
    Slope at = from;
    Whole at_bound = best_bound;
    base(at.worth, to_come, counted);
    Whole rate = 64;
    for (int round = 0; round < 24 && rate > 0; ++round) {
        Whole const distance = choices_.limit() + market_.grid * market_.step - at_bound;
        if (distance <= 0) break;
        Whole largest = 0;
        for (std::size_t k = 0; k < size; ++k) {
            lack[k] = lacks[k] - counted[k];
            if (lack[k] < 0 ? at.worth[k] == 0 : at.worth[k] == most_worth(k)) lack[k] = 0;
            largest = std::max(largest, lack[k] < 0 ? Whole(-lack[k]) : lack[k]);
        }
        if (largest == 0) break;
        Whole divisor = 1;
        while (largest / divisor > 4096) divisor *= 2;
        Whole norm = 0;
        for (Whole const& each : lack) norm += (each / divisor) * (each / divisor);
        Whole const stride = scaled_down(distance, rate, Whole(64));
        for (std::size_t k = 0; k < size; ++k) {
            Whole const length = (lack[k] < 0 ? Whole(-lack[k]) : lack[k]) / divisor;
            Whole const step = scaled_down(stride, length, norm) / divisor;
            at.worth[k] =
                std::clamp(lack[k] < 0 ? Whole(at.worth[k] - step) : Whole(at.worth[k] + step),
                           Whole(0), most_worth(k));
        }
        at.base = base(at.worth, to_come, counted);
        at_bound = bound(at, spent, lacks);
        if (at_bound > best_bound) {
            best = at;
            best_bound = at_bound;
        } else if (round % 2 == 1) {
            rate /= 2;
        }
    }
    return best;
}

/// Raises the bounds of labels by slopes that suit some of them, and takes out those beyond interest.
template <class Whole>
void Beam<Whole>::sharpen(Labels& labels, Groups to_come, std::size_t rounds) {
    auto const by_bound = [](Label const& a, Label const& b) { return a.bound < b.bound; };
    for (std::size_t round = 0; round < rounds && !labels.all.empty(); ++round) {
        // By turns the most promising one and one from somewhere among all.
        Label const label = round % 2 == 0
                                ? *std::min_element(labels.all.begin(), labels.all.end(), by_bound)
                                : labels.all[labels.all.size() * round / (rounds + 1)];
        auto const lacks = lacking(labels, label);
        Slope const* nearest = &slopes_.front();
        for (Slope const& slope : slopes_)
            if (bound(slope, label.spent, lacks) > bound(*nearest, label.spent, lacks))
                nearest = &slope;
        Slope slope = steepen(*nearest, label.spent, lacks, to_come);
        work_.take(24 * to_come.size());
        if (bound(slope, label.spent, lacks) <= label.bound) continue;
        for (Label& each : labels.all)
            each.bound = std::max(each.bound, bound(slope, each.spent, lacking(labels, each)));
        std::erase_if(labels.all, [&](Label const& each) { return each.bound > choices_.limit(); });
        slopes_.push_back(std::move(slope));
    }
}

template <class Whole>
auto Beam<Whole>::extend(Labels const& from, std::size_t index, Groups to_come, std::size_t width)
    -> Labels {
    Group<Whole> const& group = choices_.groups()[index];
    std::size_t const size = choices_.binding().size();
    std::size_t const room = std::max<std::size_t>(4 * width, 1 << 14);
    std::vector<Whole> most(size); // that can be reached, where there is no padding
    for (std::size_t const g : to_come) {
        for (std::size_t k = 0; k < size; ++k) {
            Whole counted = 0;
            for (Plan<Whole> const& plan : choices_.groups()[g].plans)
                counted = std::max(counted, plan.counted[k]);
            most[k] += counted;
        }
    }
    Labels to;
    std::optional<Whole> worst; // of the labels kept, once there are as many as may be
    std::vector<Whole> lacks(size);
    for (std::size_t parent = 0; parent < from.all.size(); ++parent) {
        Label const& label = from.all[parent];
        auto const before = lacking(from, label);
        for (std::size_t p = 0; p < group.plans.size(); ++p) {
            Plan<Whole> const& plan = group.plans[p];
            Whole spent = label.spent + plan.cost;
            bool can_reach = true;
            for (std::size_t k = 0; k < size && can_reach; ++k) {
                lacks[k] = std::max(Whole(0), Whole(before[k] - plan.counted[k]));
                can_reach = lacks[k] <= most[k] || choices_.padding(k).is_known();
                if (to_come.empty() && can_reach && lacks[k] > 0)
                    spent += choices_.padding(k).cost(lacks[k]);
            }
            if (!can_reach) continue;
            Whole highest = to_come.empty() ? Whole(spent * market_.grid) : label.bound;
            for (std::size_t at = 0; at < slopes_.size() && !to_come.empty(); ++at)
                highest = std::max(highest, bound(slopes_[at], spent, lacks));
            if (highest > choices_.limit()) continue;
            if (worst && highest > *worst) {
                choices_.leave_off(highest);
                continue;
            }
            to.all.push_back({highest, spent, to.pool.size(), static_cast<std::uint32_t>(parent),
                              static_cast<std::uint32_t>(p)});
            to.pool.insert(to.pool.end(), lacks.begin(), lacks.end());
        }
        work_.take(group.plans.size() * (2 + slopes_.size() / 2));
        if (to.all.size() <= room) continue;
        select(to, width);
        if (to.all.size() == width) worst = to.all.back().bound;
    }
    return to;
}

template <class Whole> void Beam<Whole>::select(Labels& labels, std::size_t width) {
    // Of many labels with the same bound a mixture is kept, not the offspring of a few.
    auto const mixed = [](Label const& a) {
        return (a.parent * 2'654'435'761U) ^ (a.plan * 2'246'822'519U);
    };
    auto const is_better = [&](Label const& a, Label const& b) {
        if (a.bound != b.bound) return a.bound < b.bound;
        return std::tuple(mixed(a), a.parent, a.plan) < std::tuple(mixed(b), b.parent, b.plan);
    };
    auto const order = [&](Label const& a, Label const& b) {
        auto const x = lacking(labels, a);
        auto const y = lacking(labels, b);
        auto const [at, other] = std::mismatch(x.begin(), x.end(), y.begin());
        if (at != x.end()) return *at < *other;
        return a.spent != b.spent ? a.spent < b.spent : is_better(a, b);
    };
    work_.take(labels.all.size() * std::bit_width(labels.all.size()) / 2);
    std::sort(labels.all.begin(), labels.all.end(), order);
    std::vector<Label> kept;
    for (Label const& label : labels.all) {
        auto const lacks = lacking(labels, label);
        if (!kept.empty()) {
            // With one minimum, whoever lacks more must have spent less.
            if (lacks.size() <= 1 && label.spent >= kept.back().spent) continue;
            auto const last = lacking(labels, kept.back());
            if (std::equal(lacks.begin(), lacks.end(), last.begin())) continue;
        }
        kept.push_back(label);
    }
    if (kept.size() > width) {
        std::nth_element(kept.begin(), kept.begin() + static_cast<std::ptrdiff_t>(width),
                         kept.end(), is_better);
        choices_.leave_off(kept[width].bound);
        kept.resize(width);
    }
    std::sort(kept.begin(), kept.end(), is_better);
    std::vector<Whole> pool;
    pool.reserve(kept.size() * choices_.binding().size());
    for (Label& label : kept) {
        auto const lacks = lacking(labels, label);
        label.lacking = pool.size();
        pool.insert(pool.end(), lacks.begin(), lacks.end());
    }
    labels.all = std::move(kept);
    labels.pool = std::move(pool);
}

/// The groups that leave a choice, those first whose choice moves most money: they decide how close to the
/// minimums the others can come.
template <class Whole> std::vector<std::size_t> Beam<Whole>::order() const {
    std::vector<std::size_t> result;
    std::vector<Whole> spreads;
    for (Group<Whole> const& group : choices_.groups()) {
        auto const [least, most] = std::minmax_element(
            group.plans.begin(), group.plans.end(),
            [](Plan<Whole> const& a, Plan<Whole> const& b) { return a.cost < b.cost; });
        spreads.push_back(most->cost - least->cost);
        if (group.plans.size() > 1) result.push_back(group.item);
    }
    std::stable_sort(result.begin(), result.end(),
                     [&](std::size_t a, std::size_t b) { return spreads[a] > spreads[b]; });
    // Without a choice there is still one group to end with.
    if (result.empty() && !spreads.empty()) result.push_back(0);
    return result;
}

template <class Whole>
auto Beam<Whole>::search(std::vector<Standing> const& standing, Bending<Whole> const& bending,
                         std::vector<bool> const& watched, Whole const& value, Whole const& target,
                         std::size_t width) -> Outcome {
    std::size_t const most_plans = std::max<std::size_t>(24, width / 8);
    if (!choices_.list(standing, bending, watched, value, target, most_plans))
        return {std::nullopt, 0, choices_.left_off()};
    std::vector<Group<Whole>> const& groups = choices_.groups();
    std::vector<std::size_t> const stages = order();
    if (stages.empty()) return {};
    Label first{value, 0};
    for (std::size_t s = 0; s < market_.suppliers.size(); ++s)
        if (standing[s] == Standing::open) first.spent += market_.suppliers[s].fee;
    std::vector<bool> is_stage(groups.size());
    for (std::size_t const g : stages) is_stage[g] = true;
    for (std::size_t g = 0; g < groups.size(); ++g)
        if (!is_stage[g]) first.spent += groups[g].plans.front().cost;

    slopes_.assign(1, {});
    for (std::size_t const s : choices_.binding())
        slopes_.front().worth.push_back(bending.worth[s]);
    Labels labels{{first}, choices_.lacking()};
    std::vector<std::vector<std::pair<std::uint32_t, std::uint32_t>>> trail;
    std::vector<Whole> counted(choices_.binding().size());
    std::size_t const rounds = counted.empty() ? 0 : std::min<std::size_t>(8, width / 64);
    for (std::size_t at = 0; at < stages.size(); ++at) {
        Groups const to_come = Groups(stages).subspan(at + 1);
        // Slopes found for the step before still bound this one, and the latest suit it best.
        if (slopes_.size() > 2 * rounds + 1)
            slopes_.erase(slopes_.begin() + 1,
                          slopes_.end() - static_cast<std::ptrdiff_t>(2 * rounds));
        for (Slope& slope : slopes_) slope.base = base(slope.worth, to_come, counted);
        labels = extend(labels, stages[at], to_come, width);
        if (!to_come.empty()) sharpen(labels, to_come, rounds);
        select(labels, width);
        trail.emplace_back();
        for (Label const& label : labels.all) trail.back().emplace_back(label.parent, label.plan);
    }
    if (labels.all.empty()) return {std::nullopt, 0, choices_.left_off()};
    std::vector<std::size_t> chosen(groups.size());
    std::uint32_t best = 0; // the best label stands first
    for (std::size_t at = stages.size(); at-- > 0;) {
        chosen[stages[at]] = trail[at][best].second;
        best = trail[at][best].first;
    }
    std::vector<Whole> packs(market_.bids.size());
    for (Group<Whole> const& group : groups) {
        Plan<Whole> const& plan = group.plans[chosen[group.item]];
        std::copy(plan.packs.begin(), plan.packs.end(),
                  packs.begin() + static_cast<std::ptrdiff_t>(market_.items[group.item].first_bid));
    }
    for (std::size_t k = 0; k < counted.size(); ++k) {
        Whole const& lacks = labels.pool[labels.all.front().lacking + k];
        if (lacks > 0) choices_.padding(k).add(lacks, packs);
    }
    std::optional<Whole> left_off = choices_.left_off();
    if (left_off && *left_off >= labels.all.front().bound) left_off.reset();
    return {std::move(packs), labels.all.front().bound, left_off};
}

} // namespace groat::purchasing
