#pragma once

#include <groat/sheets/payable_rows.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <string>

namespace groat::quote_sheet_detail {

/// The tax of a class; what it is of as well, where there are several.
inline std::string tax_label(TaxRule const& rule, TaxClass const& of, bool is_one_of_several,
                             Figures const& figures, Words const& words) {
    std::string const tax = rule.name == TaxRule().name ? words("tax") : rule.name;
    std::string const share = figures.share(of.rate.value(), 3);
    if (is_one_of_several) {
        std::string const net = figures.amount(of.net.money());
        return rule.is_contained
                   ? words("tax contained on", {{"tax", tax}, {"rate", share}, {"amount", net}})
                   : words("tax added on", {{"tax", tax}, {"rate", share}, {"amount", net}});
    }
    return rule.is_contained ? words("tax contained", {{"tax", tax}, {"rate", share}})
                             : words("tax added", {{"tax", tax}, {"rate", share}});
}

inline std::string discount_label(Payable const& totals, Figures const& figures,
                                  Words const& words) {
    if (!totals.discount_share)
        return totals.is_discount_cut ? words("discount cut") : words("discount");
    std::string const share = figures.share(*totals.discount_share);
    return totals.is_discount_cut ? words("discount of cut", {{"share", share}})
                                  : words("discount of", {{"share", share}});
}

GROAT_INLINE bool has_tax(Payable const& totals) {
    return std::any_of(totals.taxes.begin(), totals.taxes.end(),
                       [](TaxClass const& each) { return each.rate.value().is_positive(); });
}

GROAT_INLINE std::vector<Row> total_rows(Payable const& totals, Share const& deposit,
                                         Sender const& shop, Figures const& figures,
                                         Words const& words, std::size_t cells) {
    std::vector<Row> rows;
    auto const add = [&](std::string key, std::string label, Coins const& amount, Row::Kind kind) {
        std::vector<Cell> row(cells);
        row.front() = std::move(label);
        row.back() = figures.coins(amount);
        rows.push_back({std::move(key), std::move(row), kind});
    };
    using Kind = Row::Kind;
    bool const has_discount = !totals.discount.is_zero() || totals.is_discount_cut;
    bool const plain = !has_discount && totals.to_minimum.is_zero() && totals.rush.is_zero() &&
                       totals.delivery.is_zero();
    if (!plain || (has_tax(totals) && !shop.tax.is_contained))
        add("subtotal", words("subtotal"), totals.subtotal, Kind::total);
    if (has_discount)
        add("discount", discount_label(totals, figures, words), -totals.discount, Kind::subtotal);
    if (!totals.to_minimum.is_zero())
        add("minimum", words("to the minimum order"), totals.to_minimum, Kind::subtotal);
    if (!totals.rush.is_zero())
        add("rush",
            totals.rush_share
                ? words("rush surcharge of", {{"share", figures.share(*totals.rush_share)}})
                : words("rush surcharge"),
            totals.rush, Kind::subtotal);
    if (!totals.delivery.is_zero())
        add("delivery", words("delivery"), totals.delivery, Kind::subtotal);
    auto const add_taxes = [&] {
        bool const are_several = totals.taxes.size() > 1 && has_tax(totals);
        for (TaxClass const& each : totals.taxes)
            if (are_several || each.rate.value().is_positive())
                add("tax", in_sentence(tax_label(shop.tax, each, are_several, figures, words)),
                    each.tax, Kind::subtotal);
    };
    if (!shop.tax.is_contained) add_taxes();
    add("total", words("total"), totals.total, Kind::total);
    if (shop.tax.is_contained) add_taxes();
    if (!totals.deposit.is_zero()) {
        add("deposit", words("deposit", {{"share", figures.share(deposit.value())}}),
            totals.deposit, Kind::subtotal);
        add("balance", words("balance"), totals.balance, Kind::subtotal);
    }
    if (totals.cash && !(*totals.cash == totals.total))
        add("cash", words("total in cash"), *totals.cash, Kind::subtotal);
    return rows;
}

} // namespace groat::quote_sheet_detail
