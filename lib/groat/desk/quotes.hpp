/// Quotes of orders by id, each quoted as made together with the others and with all that the books say are made
/// together with one of them.
#pragma once

#include <groat/desk/day.hpp>
#include <groat/model/linked_book.hpp>
#include <groat/paper/sheet.hpp>

#include <string>
#include <vector>

namespace groat::desk {

struct QuoteWish {
    std::vector<std::string> orders = {};
    bool is_for_maker = false; ///< with all costs; else for the client, who sees none
    bool has_packs = false;    ///< for the maker: also what the packs cost
};

/// The orders, and after them all that the books say are made together with one of them.
[[nodiscard]] std::vector<Order const*> whole_set(std::vector<Order const*> orders,
                                                  Book const& book);

/// A sheet for each order wished for.
/// Fails    where an order is not there, is named twice, or cannot be calculated
/// Example  two orders of one item for the same day  ->  two sheets, each with its part of the shared oven
[[nodiscard]] Result<std::vector<Sheet>> quote_sheets(LinkedBook const& linked, Dates const& dates,
                                                      QuoteWish const& wish, Diagnostics& found);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/quotes.ipp>
#endif
