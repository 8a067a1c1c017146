#pragma once

#include <groat/books/write_receipt.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/write_prices.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace groat {

namespace write_receipt_detail {

inline std::string bought_line(BoughtPacks const& bought, bool has_own_tax) {
    namespace parts = write_prices_detail;
    std::string line =
        fmt::format("  - {{item: {}, pack: {}, packs: {}, paid: {}", yaml_text(bought.item.name),
                    yaml_text(parts::pack_text(bought.pack, bought.pack_text)), bought.packs.str(),
                    parts::money_text(bought.paid));
    if (!bought.deposit.is_zero())
        line += fmt::format(", deposit: {}", parts::money_text(bought.deposit));
    if (has_own_tax)
        line += fmt::format(", tax included: {}", parts::percent_text(bought.tax_included.value()));
    if (bought.is_stopgap) line += ", stopgap: yes";
    return line + "}\n";
}

} // namespace write_receipt_detail

GROAT_INLINE std::string write_receipt(Receipt const& receipt, std::string_view note) {
    auto const& items = receipt.items;
    bool const is_one_tax = std::all_of(items.begin(), items.end(), [&](BoughtPacks const& bought) {
        return bought.tax_included == items.front().tax_included;
    });
    std::string text;
    if (!note.empty()) text += fmt::format("# {}\n\n", printable(note));
    text += fmt::format("bought: {}\nsupplier: {}\n", iso_date(receipt.bought),
                        yaml_text(receipt.supplier.name));
    if (is_one_tax && !items.empty() && items.front().tax_included.value().is_positive())
        text += fmt::format("tax included: {}\n",
                            write_prices_detail::percent_text(items.front().tax_included.value()));
    text += items.empty() ? "items: []\n" : "items:\n";
    for (BoughtPacks const& bought : items)
        text += write_receipt_detail::bought_line(bought, !is_one_tax);
    return text;
}

} // namespace groat
