/// Comparing suppliers as it is asked for: some ingredients by name, all that are offered, or all that the orders of
/// the books take.
#pragma once

#include <groat/model/linked_book.hpp>
#include <groat/price/compare.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat::desk {

struct CompareWish {
    std::vector<std::string> names = {}; ///< ingredients and supplies
    bool all = false;                    ///< and everything that anybody offers
    bool by_orders = false;              ///< a month's amount is what the orders of the books take
    std::string amount = {};             ///< a month's amount of each, usable; empty: none is said
};

/// The offers of everything wished for, in the order of the wish, at the prices in force on `date`. With neither names
/// nor `all`, `by_orders` takes what the orders take.
/// Fails    on names that the books do not have, an amount that is none, where nothing is wished for, and where an
///          order or something named cannot be calculated
[[nodiscard]] Result<std::vector<Comparison>> comparisons_wished(LinkedBook const& linked,
                                                                 Date date, CompareWish const& wish,
                                                                 Diagnostics& found);

/// What all orders of the book take of each ingredient, by its index: usable, supplies as bought. Each order is taken
/// at its own prices, or at those of `date` where it has no day.
/// Fails    where one of them cannot be calculated
[[nodiscard]] std::optional<std::vector<Number>> taken_by_orders(LinkedBook const& linked,
                                                                 Date date, Diagnostics& found);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/compare.ipp>
#endif
