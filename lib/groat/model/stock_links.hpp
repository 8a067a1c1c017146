/// The names of what is on the shelf: what was bought, and own goods, loose or packed as they are sold.
#pragma once

#include <groat/model/book.hpp>

#include <fmt/format.h>

namespace groat {

/// Resolves the names in the stock of a book whose other names are indexed. `suggest(missed, otherwise)` words
/// what may have been meant.
template <class Suggest> void link_stock(Book& book, Suggest const& suggest, Diagnostics& found);

namespace stock_links_detail {

template <class Suggest>
void link_bought(StockItem& item, Book const& book, Suggest const& suggest, Diagnostics& found) {
    item.of = StockItem::Of::bought;
    if (auto const known = book.ingredient_index.find(item.item.name);
        known != book.ingredient_index.end())
        item.item.index = known->second;
    else
        found.error(item.item.origin, "unknown-ingredient",
                    fmt::format("no ingredient, supply or formula is called '{}'", item.item.name),
                    suggest(item.item.name,
                            "add it to ingredients.yaml or supplies.yaml, or write its formula"));
    if (item.sale_unit.is_given())
        found.error(item.sale_unit.origin, "not-sold",
                    fmt::format("'{}' is not something that you sell", item.item.name),
                    "'as' is for own goods that are packed: remove it");
}

void link_made(StockItem& item, Book const& book, Diagnostics& found);

} // namespace stock_links_detail

template <class Suggest> void link_stock(Book& book, Suggest const& suggest, Diagnostics& found) {
    for (StockItem& item : book.stock.items) {
        item.item.index = item.sale_unit.index = unresolved;
        auto const made = book.formula_index.find(item.item.name);
        if (made == book.formula_index.end()) {
            stock_links_detail::link_bought(item, book, suggest, found);
        } else {
            item.item.index = made->second;
            stock_links_detail::link_made(item, book, found);
        }
    }
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/stock_links.ipp>
#endif
