#pragma once

#include <groat/books/read_stock.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/shape_goods.hpp>

#include <optional>

namespace groat {

namespace read_stock_detail {

inline std::optional<StockItem> read_lot(Key const& key, Node const& node, Reading const& reading) {
    Wanted const wanted{
        "the amount", {Dimension::mass, Dimension::volume, Dimension::count}, "12 kg", true};
    StockItem item;
    item.item = {key.text, key.where, unresolved};
    item.origin = key.where;
    std::optional<Quantity> amount;
    if (node.is_mapping()) {
        Fields<shapes::lot> fields(node, reading.found);
        item.sale_unit = read_reference(fields.at("as"), reading);
        amount = read_quantity(fields.at("amount"), wanted, reading);
        item.par = read_quantity(fields.at("par"), wanted, reading);
        item.good_until = read_date(fields.at("good until"), reading);
        fields.close();
    } else {
        amount = read_quantity(&node, wanted, reading);
    }
    if (!amount) return std::nullopt;
    item.amount = *amount;
    return item;
}

/// One lot of an item, or a list of them.
inline void read_item(Key const& key, Node const& node, Reading const& reading, Stock& stock) {
    if (!node.is_sequence()) {
        if (auto lot = read_lot(key, node, reading)) stock.items.push_back(*std::move(lot));
        return;
    }
    if (node.items.empty()) expected("the amount", node, reading.found, "write how much, as 12 kg");
    bool has_par = false;
    for (Node const& each : node.items) {
        auto lot = read_lot(key, each, reading);
        if (!lot) continue;
        if (lot->par && has_par)
            reading.found.error(each.where, "given-twice",
                                fmt::format("the par of '{}' is given twice", key.text),
                                "it is for all lots together: write it in one of them");
        has_par = has_par || lot->par;
        stock.items.push_back(*std::move(lot));
    }
}

} // namespace read_stock_detail

GROAT_INLINE Stock read_stock(Node const& node, Reading const& reading) {
    Fields<shapes::stock> fields(node, reading.found);
    Stock stock;
    stock.origin = fields.where();
    stock.counted = read_date(fields.at("stock"), reading);
    if (Node const* const items = fields.at("items")) {
        if (!items->is_mapping())
            expected("a mapping of ingredients, supplies and own goods to amounts", *items,
                     reading.found, "write a line 'plain flour: 12 kg' for each");
        for (std::size_t i = 0; items->is_mapping() && i < items->items.size(); ++i) {
            if (!is_name(items->keys[i], reading)) continue;
            read_stock_detail::read_item(items->keys[i], items->items[i], reading, stock);
        }
    }
    fields.close();
    return stock;
}

} // namespace groat
