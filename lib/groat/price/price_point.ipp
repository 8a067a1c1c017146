#pragma once

#include <groat/price/price_point.hpp>

#include <groat/base/linkage.hpp>

#include <optional>

namespace groat {

GROAT_INLINE Coins to_price_point(Money const& wanted, PricePoint const& point) {
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

GROAT_INLINE Coins price_point_within(Money const& most, PricePoint const& point) {
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
