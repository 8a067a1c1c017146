/// From what is made, alone, together or in usual runs, to what an order costs: the lines of each way side by
/// side, overhead by its drivers, and what is spent once for the order.
#pragma once

#include <groat/cost/making.hpp>
#include <groat/cost/request.hpp>

#include <optional>
#include <vector>

namespace groat {

/// The cost of what is requested, of formulas that are all sound and whose ingredients all have a purchase;
/// others throw `std::logic_error`. See `Costing::cost` in engine.hpp.
[[nodiscard]] OrderCost roll_up_order(Book const& book, Formulary const& formulary,
                                      std::vector<std::optional<KeptGood>> const& kept,
                                      CostRequest const& request);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/order_rollup.ipp>
#endif
