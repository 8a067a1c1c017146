/// The minimum order that a shop states, held against what its smallest order costs.
#pragma once

#include <groat/cost/engine.hpp>

#include <optional>

namespace groat {

/// The order that costs least: one sale unit of one item, made for itself.
struct SmallestOrder {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr;
    Money cost;     ///< with order work and overhead, without delivery and payment
    Kept kept = {}; ///< the book that the sale unit stands in
};

/// Among all ways of selling that the books name and that can be costed; absent where there is none.
[[nodiscard]] std::optional<SmallestOrder> smallest_order(Costing const& costing);

/// A warning where an order raised to the minimum does not pay for the smallest order and for its payment.
[[nodiscard]] Diagnostics minimum_order_findings(Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/minimum_order.ipp>
#endif
