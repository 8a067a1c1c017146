/// When to buy what would spoil before the orders it is bought for use it.
#pragma once

#include <groat/plan/buying.hpp>

#include <cstddef>
#include <vector>

namespace groat {

/// So much of one thing, not to be bought before a day.
struct BuyingDay {
    std::size_t need = 0; ///< index in the needs
    Date from;
    Date used_until; ///< the last day that an order it is for is wanted
    Number amount;   ///< of what is to buy
};

/// For each need that does not keep from the day of buying until it is last used: its parts by day. The parts
/// add up to what is to buy of it. Orders are served in the order in which they are wanted, the shelf first:
///
///     by day d    = what all orders wanted by d take, made together - shelf,   0 at least
///     now         = by the day until which it keeps
///     then        = for the next day d that it is wanted, and all days until d + shelf life,
///                   from the last of these less the shelf life; and so on
///
/// Example  keeps 10 days, bought on the 1st; wanted 2 kg by the 5th, 3 kg by the 20th, 1 kg by the 24th
///          ->  2 kg now, 4 kg from the 14th on
[[nodiscard]] std::vector<BuyingDay> buying_days(Costing const& costing, Buying const& buying);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/buying_days.ipp>
#endif
