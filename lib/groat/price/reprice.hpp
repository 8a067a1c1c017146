/// The smallest set of price rises with which a menu as a whole reaches a margin or a food cost: fewest prices
/// changed, then least change in all (of equals those that could rise furthest), each price within a limit
/// and on its price point. Sales are taken as unchanged, and each rise says how many sales it can lose. Raising is
/// all there is to do: lower prices help neither figure while sales stay.
///
/// Both aims are linear in the prices. An item gains `rate` for each unit of its shown price:
///
///     margin m       rate = sold * (1 - fee share * (1 + tax) - m) * net part of the shown price
///     food cost r    rate = sold * r * net part of the shown price
///
/// and what is missing is `sum((cost + fee share) ...)`: the shortfall of the sums at the prices now.
#pragma once

#include <groat/price/menu.hpp>

#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace groat {

/// What the menu as a whole is to reach.
using MenuAim = std::variant<Margin, FoodCostShare>;

/// What prices may do for it.
struct RepriceLimits {
    Share move;                              ///< of each price
    std::optional<std::size_t> at_most = {}; ///< so many prices
    std::set<std::size_t> left_alone = {};   ///< lines of the menu
    bool below_first = false;                ///< items below their target go before all others
};

struct PriceRise {
    std::size_t line = 0; ///< of the menu
    Coins price;          ///< as shown
    Money change;         ///< of the shown price
    Money profit;         ///< that it adds over all sales
    Number bears;         ///< units that may go unsold before it earns nothing more

    /// The change as a part of the price before.
    [[nodiscard]] Number share_of(Coins const& before) const { return change / before.money(); }
};

struct Repricing {
    MenuAim aim;
    RepriceLimits limits;
    std::optional<Number> before; ///< the figure that the aim is about
    std::optional<Number> after;
    std::vector<PriceRise> rises; ///< in the order of the menu; none where it is reached already
    Money change;                 ///< of all prices together
    Money least_change; ///< that so few could do with: equal to `change` where that is exact
    Money profit;       ///< added by all
};

/// Within the limits. With `below_first` only items below their target rise where that is enough; else all of
/// these rise as far as they may, and the fewest and smallest rises of others make up the rest.
///
///     bears = units * (1 - contribution now / contribution then);  all units where now nothing is earned
///
/// Fails    when the aim is out of reach within the limits, with what can be reached or how many prices it
///          takes, or at any price
[[nodiscard]] Result<Repricing> reprice(MenuCost const& cost, MenuAim const& aim,
                                        RepriceLimits const& limits);

/// The lines of a menu that go by some names: a title ("coffee, cup"), or an item's name, which is all its lines.
/// Fails    with the nearest title for a name that stands for nothing
[[nodiscard]] Result<std::set<std::size_t>> lines_named(MenuCost const& cost,
                                                        std::vector<std::string> const& names);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/reprice.ipp>
#endif
