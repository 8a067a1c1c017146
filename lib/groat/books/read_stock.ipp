#pragma once

#include <groat/books/read_stock.hpp>

#include <groat/base/linkage.hpp>

#include <optional>

namespace groat {

namespace read_stock_detail {

/// One lot of an item, or a list of them.
inline void read_item(Key const& name, Node const& node, KeyShape const& key,
                      std::vector<StockItem>& items, Reading const& reading) {
    if (node.is_sequence() && node.items.empty())
        return expected("the amount", node, reading.found, "write how much, as 12 kg");
    bool has_par = false;
    for (Node const& each : read_list(&node, "the amount", reading)) {
        StockItem lot;
        lot.item = {name.text, name.where, unresolved};
        lot.origin = name.where;
        if (!read_value(lot, each, key, reading)) continue;
        if (lot.par && has_par)
            reading.found.error(each.where, "given-twice",
                                fmt::format("the par of '{}' is given twice", name.text),
                                "it is for all lots together: write it in one of them");
        has_par = has_par || lot.par;
        items.push_back(std::move(lot));
    }
}

} // namespace read_stock_detail

GROAT_INLINE bool read_value(StockItem& lot, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    if (!node.is_mapping()) return read_value(lot.amount, node, key, reading);
    Fields<shapes::lot> fields(node, reading.found);
    fields.read_into(lot, reading);
    auto const amount = fields.read<Quantity>("amount", reading);
    assign(lot.amount, amount);
    fields.close();
    return amount.has_value();
}

GROAT_INLINE bool read_value(std::vector<StockItem>& items, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    namespace parts = read_value_detail;
    Form const& names = *form_of(key, ValueKind::names);
    KeyShape lots = parts::key_of_each(key, names);
    each_named(&node, parts::names_in_words(names), reading,
               [&](Key const& name, Node const& value) {
                   lots.name = name.text;
                   read_stock_detail::read_item(name, value, lots, items, reading);
               });
    return true;
}

GROAT_INLINE Stock read_stock(Node const& node, Reading const& reading) {
    Fields<shapes::stock> fields(node, reading.found);
    Stock stock;
    stock.origin = fields.where();
    fields.read_into(stock, reading);
    fields.close();
    return stock;
}

} // namespace groat
