/// The receipts that a plan of buying would bring home, to be corrected when the goods are there.
#pragma once

#include <groat/model/book.hpp>
#include <groat/plan/basket.hpp>

#include <vector>

namespace groat {

/// A receipt for each basket, of the day of buying: for all packs of a line together
///
///     paid = packs * (price at so many packs + freight + deposit),   as listed, to the smallest coin
///
/// with the tax that the offer says is contained. A delivery is on no receipt.
/// Example  2 packs at 33.00, freight 1.00, deposit 2.00  ->  paid 72.00, deposit 4.00
[[nodiscard]] std::vector<Receipt> drafted_receipts(std::vector<Basket> const& baskets, Date bought,
                                                    Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/receipt_draft.ipp>
#endif
