/// The figures on which a shop lets its prices land.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/measure/coins.hpp>
#include <groat/model/policy.hpp>

#include <optional>

namespace groat {

/// The price point for a wanted price, on the side of tax that the shop shows.
///
/// To a step: the next multiple up, or the nearest one (half up). To endings: the least price not below
/// the wanted one that ends so. Without either: to the minor unit.
/// Throws `std::logic_error` where step or endings are no whole minor units (the readers refuse those).
/// Example  10.31 to 0.25  ->  10.50;  10.31 to endings .50 and .99  ->  10.50;  10.60  ->  10.99
[[nodiscard]] Coins to_price_point(Money const& wanted, PricePoint const& point);

/// The highest price point that is not above `most`; below 0 where none is.
/// Example  10.60 to 0.25  ->  10.50;  10.31 to endings .50 and .99  ->  9.99
[[nodiscard]] Coins price_point_within(Money const& most, PricePoint const& point);

// ---------------------------------------------------------------------------------------------------

inline Coins to_price_point(Money const& wanted, PricePoint const& point) {
    if (!point.endings.empty()) {
        Number const whole = round_to(wanted.amount(), 1, Tie::down);
        std::optional<Number> least;
        for (Number const& ending : point.endings) {
            Number candidate = whole + ending;
            if (candidate < wanted.amount()) candidate += 1;
            if (!least || candidate < *least) least = candidate;
        }
        return to_coins({*least, wanted.currency()}, {Tie::up, 0});
    }
    Rounding rounding{point.to_nearest ? Tie::half_up : Tie::up, 0};
    if (point.step) rounding.step = point.step->amount();
    return to_coins(wanted, rounding);
}

inline Coins price_point_within(Money const& most, PricePoint const& point) {
    if (point.endings.empty()) {
        Rounding rounding{Tie::down, 0};
        if (point.step) rounding.step = point.step->amount();
        return to_coins(most, rounding);
    }
    Number const whole = round_to(most.amount(), 1, Tie::down);
    std::optional<Number> highest;
    for (Number const& ending : point.endings) {
        Number candidate = whole + ending;
        if (candidate > most.amount()) candidate -= 1;
        if (!highest || candidate > *highest) highest = candidate;
    }
    return to_coins({*highest, most.currency()}, {Tie::down, 0});
}

} // namespace groat
