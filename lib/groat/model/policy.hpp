/// What a price is to reach, and on which figures it may land.
#pragma once

#include <groat/measure/money.hpp>
#include <groat/measure/rate.hpp>

#include <groat/base/source.hpp>

#include <optional>
#include <variant>
#include <vector>

namespace groat {

/// A wanted contribution per sale unit: net price less fee less variable cost.
struct Contribution {
    Money amount;
};

/// A price that is set already, on the side of tax that the shop shows; it is judged, not solved.
struct GivenPrice {
    Money amount;
};

using Target =
    std::variant<Margin, Markup, FoodCostShare, PrimeCostShare, Contribution, GivenPrice>;

/// The prices that the shop likes to show: multiples of a step, or figures with certain endings.
struct PricePoint {
    std::optional<Money> step = {};   ///< absent, and no endings: the minor unit
    std::vector<Number> endings = {}; ///< parts of one major unit, such as 0.50 and 0.99
    bool to_nearest = false;          ///< instead of up
};

/// A target, a price point, either or both; what is absent is taken from the next wider policy: order
/// line, sale unit, formula, shop.
struct PricePolicy {
    PricePolicy(); // these stand in the half, so that including it costs little
    PricePolicy(PricePolicy const&);
    PricePolicy(PricePolicy&&) noexcept;
    PricePolicy& operator=(PricePolicy const&);
    PricePolicy& operator=(PricePolicy&&) noexcept;
    ~PricePolicy();

    std::optional<Target> target = {};
    std::optional<PricePoint> point = {};
    Span origin = {};
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/policy.ipp>
#endif
