/// Prices by quantity that hold from a count on: each is the highest that any count of its range needs, so that nobody
/// who orders within it is sold below what was aimed at.
///
/// No price is raised to keep totals from falling: where more would cost less, the total of the larger count is the most
/// that is asked,
///
///     total(n) = least of m * price(m) over all m >= n
#pragma once

#include <groat/price/priced.hpp>

#include <cstddef>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

namespace groat {

/// A count of a line, the rest of the order as it is, everything costed anew.
struct CountPrice : Priced { ///< a sale unit, at the price that this count needs
    Integer count;
};

/// What is asked at most for a count, since so much more costs no more.
struct Cap {
    Integer from; ///< the first count of the tier that it lowers
    Integer more; ///< the count that costs no more
    Coins total;  ///< of that
};

/// A sale unit at the highest price that a count from `from` to `to` needs, with the burden of `worst`.
struct Tier : Priced {
    std::size_t line = 0;
    Integer from;
    Integer to;
    Integer worst;   ///< the count at which this price earns least
    CountPrice last; ///< what `to` needs
    std::optional<Cap> cap = {};
    /// Where the price is far above what the last count needs: a start that would mend it, and what it would ask.
    struct Mending {
        Integer start;
        Coins price;
    };
    std::optional<Mending> mending = {};
    std::vector<CountPrice> costed = {}; ///< rising; `last` and that of `worst` among them

    [[nodiscard]] bool is_far_dearer() const; ///< than its last count needs: by more than a quarter
};

/// From a count on, up to another.
struct TierRange {
    Integer from;
    Integer to;
};

/// The ranges of the starts, in any order, of which each is taken once. The last reaches to `most`, or to four times its
/// start.
/// Example  1, 10, 4  ->  1 to 3, 4 to 9, 10 to 40
[[nodiscard]] std::vector<TierRange> tier_ranges(std::vector<Integer> const& starts,
                                                 std::optional<Integer> const& most);

/// The tier of a range. `Counts` knows the line:
///
///     dearest(first, last)    the counts of which one needs the highest price, or none where they are too many to tell
///     at(count)               the `CountPrice` of one
///     is_tax_contained()      whether shown prices contain tax
///
/// Absent where there are too many counts.
template <class Counts>
[[nodiscard]] std::optional<Tier> tier_of(std::size_t line, TierRange const& range, Counts& counts);

/// The least that a count above `count` asks in all: of the starts of `tiers`, and of `ordered` where that is given, a
/// count with its own total. Absent where all ask more than `asked`.
[[nodiscard]] std::optional<Cap> cap_above(Integer const& count, Coins const& asked,
                                           std::vector<Tier> const& tiers,
                                           std::optional<Cap> const& ordered);

/// Puts the cap on each tier of a line; `ordered` is what is asked for the count that is ordered.
void cap_tiers(std::vector<Tier>& tiers, std::optional<Cap> const& ordered);

namespace tiers_detail {

CountPrice const& highest(std::vector<CountPrice> const& all);

template <class Counts>
std::optional<std::vector<CountPrice>> costed(TierRange const& range, Counts& counts) {
    auto const which = counts.dearest(range.from, range.to);
    if (!which) return std::nullopt;
    std::vector<CountPrice> result;
    for (Integer const& count : *which) result.push_back(counts.at(count));
    return result;
}

/// In the middle of a range as prices fall: the least count whose square is `from * to` or more.
Integer middle_start(TierRange const& range);

} // namespace tiers_detail

template <class Counts>
std::optional<Tier> tier_of(std::size_t line, TierRange const& range, Counts& counts) {
    namespace parts = tiers_detail;
    auto costed = parts::costed(range, counts);
    if (!costed) return std::nullopt;
    Tier tier;
    tier.line = line;
    tier.from = range.from;
    tier.to = range.to;
    Coins const price = parts::highest(*costed).price;
    tier.last = counts.at(range.to);
    if (costed->back().count < range.to) costed->push_back(tier.last);
    tier.costed = *std::move(costed);
    for (CountPrice const& each : tier.costed) {
        Priced here = each;
        here.ask(price, counts.is_tax_contained());
        if (!tier.worst.is_zero() && here.earned.profit >= tier.earned.profit) continue;
        tier.worst = each.count;
        static_cast<Priced&>(tier) = std::move(here);
    }
    if (tier.is_far_dearer()) {
        TierRange const rest{parts::middle_start(range), range.to};
        if (auto const priced = parts::costed(rest, counts))
            tier.mending = Tier::Mending{rest.from, parts::highest(*priced).price};
    }
    return tier;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/tiers.ipp>
#endif
