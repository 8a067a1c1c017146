/// Where the price of one piece goes, by name.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/price/item_cost.hpp>

namespace groat {

/// What a piece (or the sale unit of what is made by mass) costs and earns: each ingredient that is eaten, the dearest
/// first, what of them is lost on the way, every other category, the fee and the profit, down to the price without
/// tax. As printed it adds up, and its categories are those of `price_makeup` to the last digit.
/// The cheapest ingredients stand together where the table would have more than twelve lines.
[[nodiscard]] Table named_makeup(ItemCost const& item, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/named_makeup.ipp>
#endif
