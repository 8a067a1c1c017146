/// stock.yaml: what is on the shelf.
///
///     stock: 2026-11-24
///     items:
///       plain flour: {amount: 12 kg, par: 20 kg}
///       butter: [{amount: 4 lb, good until: 2026-12-01}, {amount: 2 lb, good until: 2026-12-20}]
///       rye shell: 120                                     # own goods: loose,
///       rye-plum sandwich: {as: box of 12, amount: 3}      # and packed
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/stock.hpp>

namespace groat {

/// The stock of a document. An item without an amount is left out, which is reported.
[[nodiscard]] Stock read_stock(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_stock.ipp>
#endif
