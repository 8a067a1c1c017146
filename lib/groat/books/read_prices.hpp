/// prices/*.yaml: price lists, each of one supplier; a supplier may have several.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/offer.hpp>

#include <optional>
#include <vector>

namespace groat {

/// A price list as read: whose it is, and its offers, which do not know yet which supplier that is in the
/// book. `supplier` is not given where the list does not name one.
struct PriceList {
    Reference supplier = {};
    /// What it says under `terms`: of a supplier without name and place.
    Supplier terms = {};
    Span terms_origin = {}; ///< unknown where it says none
    std::vector<Offer> offers = {};
    bool is_in_doubt = false; ///< an error stands outside its offers, or in one that names no item
};

/// The price list of a document. What it says for all its offers (`from`, `tax included`) is put into each
/// that does not say otherwise. An offer that names no item is left out.
[[nodiscard]] PriceList read_price_list(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_prices.ipp>
#endif
