/// purchases/*.yaml: what was bought and paid, a document for each receipt.
///
///     bought: 2026-11-20
///     supplier: Corner Dock Cash & Carry
///     tax included: 7 %
///     items:
///       - {item: butter, pack: 1 lb, packs: 6, paid: 25.14}
///       - {item: plum, pack: 22 lb, packs: 1, paid: 35.00, deposit: 2.00, stopgap: yes}
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/receipt.hpp>

namespace groat::shapes {

inline constexpr KeyShape bought_keys[] = {
    {"item", must, to<&BoughtPacks::item>(a_name), "butter",
     "The ingredient or supply that was bought."},
    {"pack", must, to<&BoughtPacks::pack>(an_amount), "1 lb", "What one pack held."},
    {"packs", must, to<&BoughtPacks::packs>(a_count), "6", "How many packs were bought."},
    {"paid", must, to<&BoughtPacks::paid>(some_money), "25.14",
     "What all of them took together, with their deposit."},
    {"deposit", may, to<&BoughtPacks::deposit>(some_money), "2.00",
     "The part of it that comes back."},
    {"tax included", may, to<&BoughtPacks::tax_included>(a_percentage), "7 %",
     "The tax that was paid with it, where it differs."},
    {"stopgap", may, to<&BoughtPacks::is_stopgap>(yes_or_no), "yes",
     "Whether it was bought in need, and says nothing of costs."},
};
inline constexpr Synonym bought_synonyms[] = {
    {"ingredient", "item"}, {"product", "item"},   {"name", "item"},   {"size", "pack"},
    {"pack size", "pack"},  {"quantity", "packs"}, {"count", "packs"}, {"total", "paid"},
    {"amount", "paid"},     {"cost", "paid"}};
inline constexpr Shape bought{"item of a receipt", "this item", bought_keys, bought_synonyms};
inline constexpr Value a_bought_item = mapping(bought);

inline constexpr KeyShape receipt_keys[] = {
    {"bought", must, a_date, "2026-11-20", "The day it was bought."},
    {"supplier", must, to<&Receipt::supplier>(a_name), "Corner Dock Cash & Carry", "From whom."},
    {"tax included", may, a_percentage, "7 %", "The tax that the amounts contain."},
    {"items", must, list_of(a_bought_item), "[{item: butter, pack: 1 lb, packs: 6, paid: 25.14}]",
     "What was bought."},
};
inline constexpr Synonym receipt_synonyms[] = {{"date", "bought"},
                                               {"vendor", "supplier"},
                                               {"shop", "supplier"},
                                               {"vat included", "tax included"},
                                               {"lines", "items"}};
inline constexpr Shape receipt{"receipt", "this receipt", receipt_keys, receipt_synonyms};
inline constexpr Value a_receipt = mapping(receipt);

} // namespace groat::shapes

namespace groat {

/// The receipt of a document. What it says of tax holds for each item that does not say otherwise. An item
/// that is wrong in itself is left out, which is reported; so are all where no day is said.
[[nodiscard]] Receipt read_receipt(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_receipts.ipp>
#endif
