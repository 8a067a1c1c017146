/// Tax on a document: reckoned once for each rate, or line by line, as the shop has set.
#pragma once

#include <groat/base/apportion.hpp>
#include <groat/measure/coins.hpp>
#include <groat/model/shop.hpp>

#include <algorithm>
#include <vector>

namespace groat {

/// What is taxed at one rate. Amounts are on the side of tax that the shop shows.
struct TaxClass {
    TaxRate rate;
    Coins base; ///< with its part of surcharges and discounts
    Coins tax;  ///< added to `base`, or contained in it
};

/// A payable amount and the rate it is taxed at.
struct TaxedAmount {
    Coins amount;
    TaxRate rate;
};

/// The tax of an amount: `amount * rate` where it comes on top, `amount * rate / (1 + rate)` where it is
/// contained, rounded half up to the minor unit.
[[nodiscard]] Coins tax_of(Coins const& amount, TaxRate const& rate, bool is_contained);

/// The tax of a document, a class for each rate in order of first appearance.
///
/// `adjustment` (surcharges less discounts) belongs to all `lines` and is divided over their classes in
/// proportion, in whole coins; `delivery`, where there is one, is taxed at its own rate.
/// Source   EN 16931 BR-CO-17 and BR-S-08: one rounding for each rate; HMRC Notice 700 allows per line
[[nodiscard]] std::vector<TaxClass> tax_classes(std::vector<TaxedAmount> const& lines,
                                                Coins const& adjustment,
                                                std::vector<TaxedAmount> const& delivery,
                                                TaxRule const& rule);

// ---------------------------------------------------------------------------------------------------

inline Coins tax_of(Coins const& amount, TaxRate const& rate, bool is_contained) {
    Money const exact = amount.money() * rate.value();
    return to_coins(is_contained ? exact / (1 + rate.value()) : exact, {Tie::half_up, 0});
}

inline std::vector<TaxClass> tax_classes(std::vector<TaxedAmount> const& lines,
                                         Coins const& adjustment,
                                         std::vector<TaxedAmount> const& delivery,
                                         TaxRule const& rule) {
    std::vector<TaxClass> classes;
    auto const enter = [&](TaxedAmount const& taxed) {
        auto found = std::find_if(classes.begin(), classes.end(),
                                  [&](TaxClass const& each) { return each.rate == taxed.rate; });
        if (found == classes.end()) found = classes.insert(classes.end(), {taxed.rate, {}, {}});
        found->base += taxed.amount;
        found->tax += tax_of(taxed.amount, taxed.rate, rule.is_contained);
    };
    for (TaxedAmount const& line : lines) enter(line);
    if (!adjustment.is_zero() && !classes.empty()) {
        std::vector<Number> weights;
        for (TaxClass const& each : classes) weights.emplace_back(each.base.minor_units());
        auto const parts = apportion(adjustment.minor_units(), weights);
        for (std::size_t i = 0; i < classes.size(); ++i) {
            Coins const part(parts[i], adjustment.currency());
            classes[i].base += part;
            classes[i].tax += tax_of(part, classes[i].rate, rule.is_contained);
        }
    }
    for (TaxedAmount const& each : delivery) enter(each);
    if (!rule.is_rounded_per_line)
        for (TaxClass& each : classes) each.tax = tax_of(each.base, each.rate, rule.is_contained);
    return classes;
}

} // namespace groat
