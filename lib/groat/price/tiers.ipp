#pragma once

#include <groat/price/tiers.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <set>

namespace groat {

namespace tiers_detail {

/// A price above 5/4 of what the last count needs is far dearer.
inline bool is_far_above(Coins const& price, Coins const& needed) { return price * 4 > needed * 5; }

GROAT_INLINE CountPrice const& highest(std::vector<CountPrice> const& all) {
    return *std::max_element(all.begin(), all.end(),
                             [](auto const& a, auto const& b) { return a.price < b.price; });
}

GROAT_INLINE Integer middle_start(TierRange const& range) {
    Integer const product = range.from * range.to;
    Integer root = sqrt(product);
    if (root * root < product) ++root;
    return std::clamp(root, Integer(range.from + 1), range.to);
}

} // namespace tiers_detail

GROAT_INLINE bool Tier::is_far_dearer() const {
    return tiers_detail::is_far_above(price, last.price);
}

GROAT_INLINE std::vector<TierRange> tier_ranges(std::vector<Integer> const& starts,
                                                std::optional<Integer> const& most) {
    std::set<Integer> const rising(starts.begin(), starts.end());
    std::vector<TierRange> ranges;
    for (auto each = rising.begin(); each != rising.end(); ++each) {
        auto const next = std::next(each);
        ranges.push_back({*each, next != rising.end() ? Integer(*next - 1)
                                                      : std::max(*each, most.value_or(*each * 4))});
    }
    return ranges;
}

GROAT_INLINE std::optional<Cap> cap_above(Integer const& count, Coins const& asked,
                                          std::vector<Tier> const& tiers,
                                          std::optional<Cap> const& ordered) {
    std::optional<Cap> least;
    auto const offer = [&](Integer const& more, Coins const& total) {
        if (more > count && total < asked && (!least || total < least->total))
            least = Cap{count, more, total};
    };
    if (ordered) offer(ordered->more, ordered->total);
    for (Tier const& each : tiers) offer(each.from, each.price * each.from);
    return least;
}

GROAT_INLINE void cap_tiers(std::vector<Tier>& tiers, std::optional<Cap> const& ordered) {
    for (Tier& tier : tiers) {
        tier.cap = cap_above(tier.to, tier.price * tier.to, tiers, ordered);
        if (!tier.cap) continue;
        // the first count whose own total is above it
        Integer const first = tier.cap->total.minor_units() / tier.price.minor_units() + 1;
        tier.cap->from = std::max(tier.from, first);
    }
}

} // namespace groat
