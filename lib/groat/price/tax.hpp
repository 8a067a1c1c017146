/// Tax on a document: counted once for each rate, or line by line, as the shop has set.
#pragma once

#include <groat/measure/coins.hpp>
#include <groat/model/sender.hpp>

#include <vector>

namespace groat {

/// What is taxed at one rate. Amounts are on the side of tax that the shop shows, unless they say otherwise.
struct TaxClass {
    TaxRate rate;
    Coins base; ///< with its part of surcharges, discounts and delivery
    Coins tax;  ///< added to `base`, or contained in it
    Coins net;  ///< the taxable amount: `base`, less the tax that it contains
};

/// A payable amount and the rate it is taxed at.
struct TaxedAmount {
    Coins amount;
    TaxRate rate;
};

/// All that stands above the tax of a document.
struct TaxedDocument {
    std::vector<TaxedAmount> lines;
    std::vector<Coins> shared = {}; ///< surcharges, discounts, delivery: taxed as the lines are
    std::vector<TaxedAmount> apart = {}; ///< what has a rate of its own
    TaxRate main = {};                   ///< for what is shared where no line is above 0
};

struct DocumentTax {
    std::vector<TaxClass> classes; ///< in order of first appearance
    std::vector<Coins> of_lines;   ///< each line's part of the tax of its class
};

/// The rate of a name: empty, or `main`, for the shop's own, `none` for none.
[[nodiscard]] TaxRate tax_rate(TaxRule const& rule, Reference const& name);

/// The tax of an amount: `amount * rate` where it comes on top, `amount * rate / (1 + rate)` where it is
/// contained, rounded half up to the minor unit.
[[nodiscard]] Coins tax_of(Coins const& amount, TaxRate const& rate, bool is_contained);

/// The tax of a document, with a class for each rate.
///
/// Each of `shared` is divided over the classes in proportion to their lines above 0, in whole coins, by
/// largest remainder. The tax of a class is rounded once, and divided over what it consists of in the same way;
/// where tax is rounded per line, each amount and each part of one is rounded for itself.
/// Source   EN 16931 BR-CO-17 and BR-S-08: one rounding for each rate; HMRC Notice 700 allows per line. Delivery
///          by proportion: California sales and use tax annotation 557.0111
[[nodiscard]] DocumentTax tax_of_document(TaxedDocument const& document, TaxRule const& rule);

/// The one rate that stands for those of the lines above 0, in proportion: an amount with this tax on it is as
/// much as its parts with theirs.
[[nodiscard]] TaxRate mean_rate(TaxedDocument const& document, TaxRule const& rule);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/tax.ipp>
#endif
