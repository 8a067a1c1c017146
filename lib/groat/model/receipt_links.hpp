/// A purchase is itself an offer: of its supplier and pack, in force from its day, at what was paid for a
/// pack. It is turned into one here, once.
#pragma once

#include <groat/model/book.hpp>

#include <vector>

namespace groat {

/// Finds the supplier of each receipt, and asks about one that is like another who has a price list, and about
/// what was bought where nothing is bought.
void link_suppliers_of_receipts(Book& book, Diagnostics& found);

/// Takes out of the book whatever offers came from receipts, so that they can be made anew.
void drop_paid_offers(Book& book);

/// Adds an offer for everything on the receipts whose item and supplier are known, behind those of the lists:
///
///     price = (paid - deposit) / packs,   deposit = deposit / packs,   no freight
///
/// with the recoverable tax that the receipt contains. Yield, code and most packs are those of the supplier's
/// list for the same pack: of its newest price by then, or where there was none yet, of its first.
/// They stand in the order of their days; of one day the larger outlay is the last, of equals the first in
/// reading order, so that whoever looks from the end meets the one that rules.
void add_paid_offers(Book& book);

/// The offers that a receipt which is not in the book would make, one for each item and pack: of several the one of
/// the larger outlay. Its items are resolved.
[[nodiscard]] std::vector<Offer> offers_of(Receipt const& receipt, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/receipt_links.ipp>
#endif
