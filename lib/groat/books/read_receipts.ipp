#pragma once

#include <groat/books/read_receipts.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

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
    fields.read_into(bought, reading);
    Node const* const pack = fields.at("pack");
    fields.close();
    bought.is_in_doubt = reading.found.errors_met() > before;
    if (bought.is_in_doubt) return bought;
    bought.pack_text = trimmed(pack->text);
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
    auto const day = fields.read<Date>("bought", reading);
    fields.read_into(receipt, reading);
    TaxRate const tax = fields.read<TaxRate>("tax included", reading).value_or(TaxRate());
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
