#pragma once

#include <groat/cost/engine.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/formulary.hpp>
#include <groat/cost/kept_goods.hpp>
#include <groat/cost/order_rollup.hpp>

#include <optional>
#include <utility>

namespace groat {

struct Costing::All {
    All(LinkedBook book, Date date)
        : linked(std::move(book)),
          formulary(formulary_of(linked.book(), date)),
          kept(kept_goods(linked.book(), formulary)) {}

    LinkedBook linked;
    Formulary formulary;
    std::vector<std::optional<KeptGood>> kept; ///< by formula
};

GROAT_INLINE Costing::Costing(LinkedBook book, Date date)
    : all_(std::make_shared<All const>(std::move(book), date)) {}

GROAT_INLINE Book const& Costing::book() const& { return all_->linked.book(); }
GROAT_INLINE Formulary const& Costing::formulary() const& { return all_->formulary; }
GROAT_INLINE LinkedBook Costing::linked() const { return all_->linked; }
GROAT_INLINE Date Costing::date() const { return all_->formulary.costs.date; }

GROAT_INLINE KeptGood const* Costing::kept(std::size_t formula) const& {
    return all_->kept[formula] ? &*all_->kept[formula] : nullptr;
}

GROAT_INLINE Diagnostics Costing::findings() const {
    Diagnostics found;
    std::vector<bool> seen(book().formulas.size(), false);
    for (std::size_t i = 0; i < book().formulas.size(); ++i) {
        collect(i, Prices::needed, seen, found);
        for (SaleUnit const& unit : book().formulas[i].sold_as) collect_packing(unit, found);
    }
    return found;
}

GROAT_INLINE Diagnostics Costing::findings(std::size_t formula, SaleUnit const* unit) const {
    Diagnostics found;
    std::vector<bool> seen(book().formulas.size(), false);
    collect(formula, Prices::needed, seen, found);
    if (unit != nullptr) collect_packing(*unit, found);
    return found;
}

GROAT_INLINE Diagnostics Costing::weighing_findings(std::size_t formula) const {
    Diagnostics found;
    std::vector<bool> seen(book().formulas.size(), false);
    collect(formula, Prices::not_needed, seen, found);
    return found;
}

GROAT_INLINE void Costing::need(std::size_t ingredient, Span where, Diagnostics& found) const {
    Flaw const& problem = formulary().costs.problems[ingredient];
    if (!problem.code.empty()) found.error(where, problem);
    auto const& purchase = formulary().costs.purchases[ingredient];
    if (!purchase || !purchase->is_instead) return;
    Flaw const said = instead_of_preferred(*purchase, ingredient, book(), date());
    found.warn(book().ingredients[ingredient].preferred_supplier.origin, said.code, said.what,
               said.help);
}

/// Only of what is sold itself: a box for shells does not matter to the sandwich made of them.
GROAT_INLINE void Costing::collect_packing(SaleUnit const& unit, Diagnostics& found) const {
    for (Consumption const& use : unit.packing)
        if (use.supply.is_resolved()) need(use.supply.index, use.supply.origin, found);
}

GROAT_INLINE void Costing::collect(std::size_t root, Prices prices, std::vector<bool>& seen,
                                   Diagnostics& found) const {
    std::vector<std::size_t> open{root};
    while (!open.empty()) {
        std::size_t const index = open.back();
        open.pop_back();
        if (seen[index]) continue;
        seen[index] = true;
        Formula const& formula = book().formulas[index];
        found.add(formulary().problems[index]);
        if (auto const cycle = formulary().order.cycles_of.find(index);
            cycle != formulary().order.cycles_of.end())
            found.add(cycle->second);
        for (Line const& line : formula.lines) {
            if (line.of == Line::Of::formula)
                open.push_back(line.item.index);
            else if (line.of == Line::Of::ingredient && prices == Prices::needed)
                need(line.item.index, line.origin, found);
        }
        if (prices == Prices::not_needed) continue;
        for (Consumption const& use : formula.consumables)
            if (use.supply.is_resolved()) need(use.supply.index, use.supply.origin, found);
    }
}

GROAT_INLINE OrderCost Costing::cost(CostRequest const& request) const {
    OrderCost result = roll_up_order(book(), formulary(), all_->kept, request);
    result.kept = Kept(linked());
    return result;
}

} // namespace groat
