/// stock.yaml: what is on the shelf.
///
///     stock: 2026-11-24
///     items:
///       plain flour: {amount: 12 kg, par: 20 kg}
///       butter: [{amount: 4 lb, good until: 2026-12-01}, {amount: 2 lb, good until: 2026-12-20}]
///       rye shell: 120                                     # own goods: loose,
///       rye-plum sandwich: {as: box of 12, amount: 3}      # and packed
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/stock.hpp>

namespace groat {

/// One lot: an amount, or a mapping; one without an amount is none.
bool read_value(StockItem& lot, Node const& node, KeyShape const& key, Reading const& reading);
/// All lots, by the name of what they are of.
bool read_value(std::vector<StockItem>& items, Node const& node, KeyShape const& key,
                Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape lot_keys[] = {
    {"as", may, to<&StockItem::sale_unit>(a_name), "box of 12",
     "The sale unit, of own goods that are packed."},
    {"amount", must, an_amount_or_nothing, "12 kg", "How much there is."},
    {"par", may, to<&StockItem::par>(an_amount_or_nothing), "20 kg",
     "What the shelf is filled up to."},
    {"good until", may, to<&StockItem::good_until>(a_date), "2026-12-01",
     "The last day on which it is good."},
};
inline constexpr Synonym lot_synonyms[] = {{"quantity", "amount"},
                                           {"use by", "good until"},
                                           {"best before", "good until"},
                                           {"expires", "good until"}};
inline constexpr Shape lot{"item on the shelf", "this item", lot_keys, lot_synonyms};
inline constexpr Value a_single_lot = an_amount_or_nothing | mapping(lot);
inline constexpr Value some_lots = list_of(a_single_lot);

inline constexpr KeyShape stock_keys[] = {
    {"stock", must, to<&Stock::counted>(a_date), "2026-11-24", "The day it was counted."},
    {"items", must, to<&Stock::items>(names_to("ingredients, supplies and own goods", some_lots)),
     "{plain flour: 12 kg}", "What is on the shelf."},
};
inline constexpr Synonym stock_synonyms[] = {
    {"date", "stock"}, {"counted", "stock"}, {"ingredients", "items"}, {"lines", "items"}};
inline constexpr Shape stock{"stock", "this stock", stock_keys, stock_synonyms};
inline constexpr Value a_stock = mapping(stock);

} // namespace groat::shapes

namespace groat {

/// The stock of a document. An item without an amount is left out, which is reported.
[[nodiscard]] Stock read_stock(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_stock.ipp>
#endif
