#pragma once

#include <groat/books/read_receipts.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/shape_goods.hpp>

#include <utility>

namespace groat {

namespace read_receipts_detail {

/// What cannot be read of it is reported, and it is in doubt then.
inline BoughtPacks read_bought(Node const& node, TaxRate const& tax, Reading const& reading) {
    std::size_t const before = reading.found.errors_met();
    Fields<shapes::bought> fields(node, reading.found);
    BoughtPacks bought;
    bought.origin = fields.where();
    bought.tax_included = tax;
    bought.item = read_reference(fields.at("item"), reading);
    Node const* const pack_node = fields.at("pack");
    auto const pack = read_quantity(
        pack_node, {"the pack", {Dimension::mass, Dimension::volume, Dimension::count}, "1 lb"},
        reading);
    auto const packs = read_count(fields.at("packs"), "the number of packs", reading);
    auto paid = read_money(fields.at("paid"), reading);
    assign(bought.deposit, read_money(fields.at("deposit"), reading));
    assign(bought.tax_included, read_rate<TaxRate>(fields.at("tax included"), reading));
    assign(bought.is_stopgap, read_yes_no(fields.at("stopgap"), reading));
    fields.close();
    bought.is_in_doubt = reading.found.errors_met() > before || !pack || !packs || !paid;
    if (bought.is_in_doubt) return bought;
    bought.pack = *pack;
    bought.pack_text = trimmed(pack_node->text);
    bought.packs = *packs;
    bought.paid = *std::move(paid);
    if (bought.paid < bought.deposit) {
        reading.found.error(
            fields.place_of("deposit"), "deposit-above-paid",
            "the deposit is more than what was paid in all",
            "'paid' is what all packs took together, with their deposit; 'deposit' is "
            "the part of it that comes back");
        bought.is_in_doubt = true;
    }
    return bought;
}

} // namespace read_receipts_detail

GROAT_INLINE Receipt read_receipt(Node const& node, Reading const& reading) {
    std::size_t const errors = reading.found.errors_met();
    std::size_t errors_of_items = 0;
    Fields<shapes::receipt> fields(node, reading.found);
    Receipt receipt;
    receipt.origin = fields.where();
    auto const day = read_date(fields.at("bought"), reading);
    receipt.supplier = read_reference(fields.at("supplier"), reading);
    TaxRate tax;
    assign(tax, read_rate<TaxRate>(fields.at("tax included"), reading));
    Node const* const items = fields.at("items");
    for (Node const& each : read_list(items, "a list of what was bought", reading)) {
        std::size_t const before = reading.found.errors_met();
        BoughtPacks bought = read_receipts_detail::read_bought(each, tax, reading);
        if (!bought.item.is_given()) continue;
        errors_of_items += reading.found.errors_met() - before;
        receipt.items.push_back(std::move(bought));
    }
    fields.close();
    receipt.is_in_doubt = reading.found.errors_met() - errors > errors_of_items;
    if (!day) receipt.items.clear();
    if (day) receipt.bought = *day;
    return receipt;
}

} // namespace groat
