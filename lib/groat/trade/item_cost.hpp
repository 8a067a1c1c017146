/// An item costed and priced for itself, as for a menu.
#pragma once

#include <groat/trade/line_price.hpp>

#include <optional>

namespace groat {

/// An item costed for itself, as for a menu: no wholes, a standard run that spreads what is done once.
struct ItemCost {
    std::size_t formula = 0;
    bool has_run = false; ///< a standard run is stated; else one sale unit bears it all
    OrderCost cost;       ///< of the run, one line
    QuoteLine line;       ///< priced
};

/// `unit` null: the first sale unit of the formula; where it has none, the piece, or the kilogram of what
/// is made by mass. Where no policy states a target, the item is costed but has no price.
/// Fails    as `quote` does
[[nodiscard]] std::optional<ItemCost> cost_item(Costing const& costing, std::size_t formula,
                                                SaleUnit const* unit, Diagnostics& found);

// ---------------------------------------------------------------------------------------------------

/// How a formula by mass is costed that is not sold by itself.
[[nodiscard]] inline SaleUnit const& a_kilogram() {
    static SaleUnit const unit{"kilogram", {1000, Dimension::mass, nullptr}, {}, {}, {}, {}};
    return unit;
}

inline std::optional<ItemCost> cost_item(Costing const& costing, std::size_t index,
                                         SaleUnit const* unit, Diagnostics& found) {
    Book const& book = costing.book();
    Formula const& formula = book.formulas[index];
    if (unit == nullptr && !formula.sold_as.empty()) unit = &formula.sold_as.front();
    if (unit == nullptr && !formula.makes_pieces()) unit = &a_kilogram();
    Sale sale{index, unit, 1};
    ItemCost result;
    result.formula = index;
    std::optional<Number> run = formula.standard_run;
    if (!run && formula.makes_pieces()) run = book.shop.standard_run;
    result.has_run = run.has_value();
    quoting::Pricer pricer(costing, found);
    if (!pricer.can_cost({sale}, formula.origin)) return std::nullopt;
    if (run) sale.count = *run / sale.holds();
    result.cost = costing.cost({{sale}, Wholes::none});
    FeeTerms fee;
    if (book.shop.paid_by.is_resolved()) {
        Fee const& terms = book.shop.fees[book.shop.paid_by.index];
        fee = {terms.share, terms.fixed};
    }
    auto line = pricer.price_line(
        result.cost.lines.front(), quoting::policy_of(book.shop, formula, unit, nullptr),
        formula.origin, fee, quoting::tax_rate(book.shop.tax, formula.tax), false);
    pricer.warn_of_stale_prices(result.cost);
    if (!line) return std::nullopt;
    pricer.warn_of_loss(*line, formula.origin);
    result.line = std::move(*line);
    return result;
}

} // namespace groat
