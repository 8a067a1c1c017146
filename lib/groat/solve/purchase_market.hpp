/// A purchase in whole numbers: every amount of money in one common unit, every item's contents in their
/// greatest common measure. The search knows nothing else, and so never rounds. What will be used of leftovers is
/// part of the demand, of which so much may stay short for a price: what that use would have saved. Who delivers free
/// from some order on stands in it twice, of which at most one is used: with the fee, and without it but with that
/// order as the minimum. `Whole` is a 64-bit integer
/// where all sums are sure to fit, and an `Integer` of any size otherwise.
#pragma once

#include <groat/base/number.hpp>

#include <algorithm>
#include <cstdint>
#include <limits>
#include <type_traits>
#include <utility>
#include <vector>

namespace groat::purchasing {

/// `from` to `to` packs of a bid cost `cost` each.
template <class Whole> struct Tier {
    Whole from;
    Whole to;
    Whole cost;
    Whole counted;
};

/// An offer. More than `most` packs are never of use: they neither cover, reach a minimum nor a break.
template <class Whole> struct Bid {
    std::size_t offer = 0;
    std::size_t item = 0;
    std::size_t supplier = 0;
    std::size_t link = 0;
    Whole content;
    Whole most;
    bool is_unlimited = false;
    std::vector<Tier<Whole>> tiers = {};

    /// The tier of `packs` packs, above 0.
    [[nodiscard]] Tier<Whole> const& tier(Whole const& packs) const {
        std::size_t index = tiers.size() - 1;
        while (tiers[index].from > packs) --index;
        return tiers[index];
    }
    [[nodiscard]] Whole cost(Whole const& packs) const {
        return packs == 0 ? Whole(0) : Whole(packs * tier(packs).cost);
    }
    [[nodiscard]] Whole counted(Whole const& packs) const {
        return packs == 0 ? Whole(0) : Whole(packs * tier(packs).counted);
    }
};

/// The bids of one item stand together, and so do its links: one for each supplier who offers it.
template <class Whole> struct Item {
    Whole demand;      ///< with what will be used of what is left over
    Whole most_short;  ///< of it, that need not be bought
    Whole short_price; ///< what a unit of it costs that is not bought
    std::size_t first_bid = 0;
    std::size_t end_bid = 0;
    std::size_t first_link = 0;
    std::size_t end_link = 0;

    /// What it costs that so much is missing; nothing where it is covered.
    [[nodiscard]] Whole shortage(Whole const& missing) const {
        return missing <= 0 ? Whole(0) : Whole(missing * short_price);
    }
};

template <class Whole> struct Terms {
    Whole fee;
    Whole minimum;
    /// The most that a unit counted towards the minimum may be worth before a pack would seem to pay.
    Whole most_worth;
    bool has_minimum() const { return minimum > 0; }
};

template <class Whole> struct Market {
    std::vector<Item<Whole>> items;
    std::vector<Bid<Whole>> bids;
    std::vector<Terms<Whole>> suppliers; ///< those of the problem, then those who deliver free
    std::vector<std::size_t> twin;       ///< by supplier: the other one who is the same, or itself
    std::vector<std::size_t> link_supplier;
    Whole grid;    ///< worths and shares are whole multiples of 1 / grid of a unit of money
    Whole step;    ///< every total is a multiple of it
    Whole ceiling; ///< above every total
    Number unit;   ///< what one unit of money is worth

    /// The least total that is not below `value / grid`.
    [[nodiscard]] Whole round_up(Whole const& value) const {
        if (value <= 0) return Whole(0);
        Whole const whole = (value + grid - 1) / grid;
        return (whole + step - 1) / step * step;
    }
};

/// `a * b / c` rounded down, of figures that are not negative.
template <class Whole>
[[nodiscard]] Whole scaled_down(Whole const& a, Whole const& b, Whole const& c);

/// Whether `a / b <= c / d`, of figures that are not negative and divisors above 0.
template <class Whole>
[[nodiscard]] bool is_ratio_at_most(Whole const& a, Whole const& b, Whole const& c, Whole const& d);

/// The greatest common divisor of figures that are not negative; of 0 and another, the other.
template <class Whole> [[nodiscard]] Whole common_measure(Whole a, Whole b) {
    while (b != 0) a = std::exchange(b, Whole(a % b));
    return a;
}

// ---------------------------------------------------------------------------------------------------

template <class Whole> Whole scaled_down(Whole const& a, Whole const& b, Whole const& c) {
    if constexpr (std::is_same_v<Whole, std::int64_t>) {
        constexpr std::int64_t half = std::int64_t{1} << 31;
        if ((a < half && b < half) || a == 0 || b <= std::numeric_limits<std::int64_t>::max() / a)
            return a * b / c;
        using Wide = boost::multiprecision::int128_t;
        return static_cast<std::int64_t>(Wide(a) * Wide(b) / Wide(c));
    } else {
        return a * b / c;
    }
}

template <class Whole>
bool is_ratio_at_most(Whole const& a, Whole const& b, Whole const& c, Whole const& d) {
    if constexpr (std::is_same_v<Whole, std::int64_t>) {
        using Wide = boost::multiprecision::int128_t;
        constexpr std::int64_t half = std::int64_t{1} << 31;
        if (a < half && b < half && c < half && d < half) return a * d <= c * b;
        return Wide(a) * Wide(d) <= Wide(c) * Wide(b);
    } else {
        return a * d <= c * b;
    }
}

} // namespace groat::purchasing
