/// Buying as it is asked for: what to buy for orders from everybody, the list that goes to one supplier, or drafts of
/// receipts to be corrected when it was bought.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/paper/sheet.hpp>

#include <string>
#include <vector>

namespace groat::desk {

struct BuyWish {
    std::vector<std::string> orders = {}; ///< by their ids, made together
    std::string supplier = {};            ///< whose list is wanted; empty: everybody's
};

/// What to buy, at the prices of the day of `costing`, as a sheet; with a supplier, the list that goes to them.
/// Fails    where an order or the supplier is not there, nothing is to be bought from them, or an order cannot be
///          calculated
[[nodiscard]] Result<Sheet> buying_sheet(Costing const& costing, BuyWish const& wish,
                                         Diagnostics& found);

/// The same as documents of purchases/, one for each supplier, under a note that says what they are.
/// Fails    likewise, and where nothing is to be bought at all
[[nodiscard]] Result<std::string> receipt_drafts(Costing const& costing, BuyWish const& wish,
                                                 Diagnostics& found);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/buy.ipp>
#endif
