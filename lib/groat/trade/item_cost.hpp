/// An item costed and priced for itself, as for a menu.
#pragma once

#include <groat/trade/line_price.hpp>

#include <optional>
#include <vector>

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

namespace quoting {

/// How an item is priced where that is not as its formula and the shop say.
struct ItemTerms {
    std::vector<PricePolicy const*> nearer = {}; ///< go before those of sale unit, formula and shop
    Reference const* tax = nullptr;
    Reference const* paid_by = nullptr;
    std::optional<Number> items_per_payment = {}; ///< absent: all of the run share a fixed fee
    std::optional<Span> where = {};               ///< of findings; absent: the formula
    bool is_brief = false;                        ///< the cost on record is that of the line only
};

class ItemPricer : public Pricer {
public:
    using Pricer::Pricer;

    /// Costs and prices an item by itself; says nothing of a price below cost.
    std::optional<ItemCost> item(std::size_t index, SaleUnit const* unit,
                                 ItemTerms const& terms = {}) {
        Formula const& formula = book_.formulas[index];
        Span const where = terms.where.value_or(formula.origin);
        if (unit == nullptr && !formula.sold_as.empty()) unit = &formula.sold_as.front();
        if (unit == nullptr && !formula.makes_pieces()) unit = &a_kilogram();
        Sale sale{index, unit, 1};
        ItemCost result;
        result.formula = index;
        std::optional<Number> run = formula.standard_run;
        if (!run && formula.makes_pieces()) run = shop_.standard_run;
        result.has_run = run.has_value();
        if (!can_cost({sale}, where)) return std::nullopt;
        if (run) sale.count = *run / sale.holds();
        result.cost = costing_.cost({{sale}, Wholes::none, {}, !terms.is_brief, !terms.is_brief});
        FeeTerms fee = fee_terms(terms.paid_by);
        if (terms.items_per_payment) fee.fixed *= sale.count / *terms.items_per_payment;
        Reference const& tax = terms.tax != nullptr ? *terms.tax : formula.tax;
        auto line =
            price_line(result.cost.lines.front(), policy_of(shop_, formula, unit, terms.nearer),
                       where, fee, tax_rate(shop_.tax, tax), false);
        warn_of_stale_prices(result.cost);
        if (!line) return std::nullopt;
        result.line = std::move(*line);
        return result;
    }

private:
    [[nodiscard]] FeeTerms fee_terms(Reference const* paid_by) const {
        Reference const& payment = paid_by != nullptr ? *paid_by : shop_.paid_by;
        if (!payment.is_resolved()) return {};
        Fee const& fee = shop_.fees[payment.index];
        return {fee.share, fee.fixed};
    }
};

} // namespace quoting

inline std::optional<ItemCost> cost_item(Costing const& costing, std::size_t index,
                                         SaleUnit const* unit, Diagnostics& found) {
    quoting::ItemPricer pricer(costing, found);
    auto result = pricer.item(index, unit);
    if (result) pricer.warn_of_loss(result->line, costing.book().formulas[index].origin);
    return result;
}

} // namespace groat
