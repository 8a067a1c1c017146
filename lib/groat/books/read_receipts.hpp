/// purchases/*.yaml: what was bought and paid, a document for each receipt.
///
///     bought: 2026-11-20
///     supplier: Corner Dock Cash & Carry
///     tax included: 7 %
///     items:
///       - {item: butter, pack: 1 lb, packs: 6, paid: 25.14}
///       - {item: plum, pack: 22 lb, packs: 1, paid: 35.00, deposit: 2.00, stopgap: yes}
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/receipt.hpp>

namespace groat {

/// The receipt of a document. What it says of tax holds for each item that does not say otherwise. An item
/// that is wrong in itself is left out, which is reported; so are all where no day is said.
[[nodiscard]] Receipt read_receipt(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_receipts.ipp>
#endif
