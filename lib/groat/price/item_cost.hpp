/// An item costed and priced for itself, as for a menu: in its standard run, as it would be made.
#pragma once

#include <groat/cost/standard_run.hpp>
#include <groat/price/line_price.hpp>
#include <groat/price/tax.hpp>

#include <optional>
#include <vector>

namespace groat {

/// An item costed in its standard run: whole pieces started, batch steps, whole mixes and loads, preheating;
/// without what belongs to orders.
struct ItemCost {
    std::size_t formula = 0;
    StandardRun run;
    OrderCost cost; ///< of the run, one line
    QuoteLine line; ///< priced

    /// Pieces or grams of the run, in whole sale units.
    [[nodiscard]] Number made() const { return line.count * run.sale.holds(); }
};

/// Costs what an order of just the standard run would, to the last digit, without what is done, used up or
/// spent once for every order. `unit` null: the first sale unit of the formula; where it has none, the piece, or the kilogram of what
/// is made by mass. Where no policy states a target, the item is costed but has no price.
/// Fails    as `quote` does
[[nodiscard]] std::optional<ItemCost> cost_item(Costing const& costing, std::size_t formula,
                                                SaleUnit const* unit, Diagnostics& found);

/// How a formula by mass is costed that is not sold by itself.
[[nodiscard]] SaleUnit const& a_kilogram();

namespace quoting_detail {

/// How an item is priced where that is not as its formula and the shop say.
struct ItemTerms {
    std::vector<PricePolicy const*> nearer = {}; ///< go before those of sale unit, formula and shop
    Reference const* tax = nullptr;
    std::vector<PaidPart> const* paid_by = nullptr; ///< null: as the shop's
    std::optional<Number> items_per_payment = {};   ///< absent: all of the run share a fixed fee
    bool is_at_counter = false;                     ///< each payment is a sale at the counter
    std::optional<Span> where = {};                 ///< of findings; absent: the formula
    bool is_brief = false;                          ///< the cost on record is that of the line only

    /// How often so many are paid for.
    [[nodiscard]] Number payments(Number const& units) const {
        return items_per_payment ? units / *items_per_payment : Number(1);
    }
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
        ItemCost result;
        result.formula = index;
        if (!can_cost({{index, unit, 1}}, where)) return std::nullopt;
        result.run = standard_run(book_, costing_.formulary(), index, unit);
        Number const& count = result.run.sale.count;
        Number const payments = terms.payments(count);
        CostRequest request{{result.run.sale}};
        request.scope = Scope::run;
        request.divides_losses = request.keeps_record = !terms.is_brief;
        if (terms.is_at_counter) request.counter_sales = payments;
        result.cost = costing_.cost(request);
        FeeTerms fee = fee_terms(terms.paid_by);
        fee.fixed *= payments;
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
    /// Paid in several ways, a fee weighs by the part that is paid so.
    [[nodiscard]] FeeTerms fee_terms(std::vector<PaidPart> const* paid_by) const {
        if (paid_by == nullptr) return fee_of(shop_.paid_by);
        Number share;
        Money fixed;
        for (PaidPart const& part : *paid_by) {
            FeeTerms const terms = fee_of(part.how);
            share += terms.share.value() * part.share.value();
            fixed += terms.fixed * part.share.value();
        }
        return {FeeRate::of(share).value(), fixed}; // a mean of rates is one
    }

    [[nodiscard]] FeeTerms fee_of(Reference const& payment) const {
        if (!payment.is_resolved()) return {};
        Fee const& fee = shop_.fees[payment.index];
        return {fee.share, fee.fixed};
    }
};

} // namespace quoting_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/item_cost.ipp>
#endif
