/// What one item costs, for the maker.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/price/item_cost.hpp>

namespace groat {

/// Cost by category per piece, sale unit and standard run, yield loss, price and what it earns, how the run is made
/// and what it does not fill, and what everything was calculated from.
[[nodiscard]] Sheet cost_sheet(ItemCost const& item, Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/cost_sheet.ipp>
#endif
