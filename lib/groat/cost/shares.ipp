#pragma once

#include <groat/cost/shares.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

#include <utility>

namespace groat {

GROAT_INLINE Money pack_cost(Purchase const& purchase, Number const& bought) {
    return purchase.pack_cost * ceiling(bought / purchase.content);
}

GROAT_INLINE std::map<std::size_t, Number> whole_pack_uses(Book const& book,
                                                           Formulary const& formulary,
                                                           Explosion const& run,
                                                           std::vector<Sale> const& sales) {
    std::map<std::size_t, Number> uses;
    auto const add = [&](std::size_t index, Number const& amount) {
        Ingredient const& ingredient = book.ingredients[index];
        if (ingredient.buys_whole_packs && !ingredient.is_metered) uses[index] += amount;
    };
    for (FormulaRun const& each : run.runs) {
        if (!each.is_taken)
            for (BatchLine const& line : formulary.with_losses[each.formula].lines)
                if (!line.is_formula) add(line.index, line.bought * each.made);
        for (Consumption const& use : book.formulas[each.formula].consumables)
            if (!each.is_taken || use.per == Per::order)
                add(use.supply.index, ceiling(use.amount * each.driver(use)));
    }
    for (Sale const& sale : sales)
        if (sale.unit != nullptr)
            for (Consumption const& use : sale.unit->packing)
                add(use.supply.index, ceiling(use.amount * sale.count));
    return uses;
}

GROAT_INLINE Shares::Shares(Book const& book, Formulary const& formulary,
                            std::vector<std::vector<Sale>> const& orders)
    : book_(book), formulary_(formulary) {
    auto const made_for = [&](std::vector<Sale> sales) {
        Explosion run = explode(book, formulary, Losses::all, Wholes::all, sales, KeptGoods::taken);
        return MadeFor{std::move(sales), std::move(run)};
    };
    std::vector<Sale> all;
    for (std::vector<Sale> const& sales : orders) {
        all.insert(all.end(), sales.begin(), sales.end());
        alone_.push_back(made_for(sales));
    }
    together_ = made_for(std::move(all));
}

GROAT_INLINE Number Shares::of(PooledCost const& what) const {
    Number apart;
    for (MadeFor const& each : alone_) apart += cost(what, each);
    return apart.is_zero() ? Number(1) : cost(what, together_) / apart;
}

/// In units of its own: batches, pieces, times, loads, heatings, money.
GROAT_INLINE Number Shares::cost(PooledCost const& what, MadeFor const& made) const {
    using Kind = PooledCost::Kind;
    if (what.kind == Kind::packs) {
        auto const uses = whole_pack_uses(book_, formulary_, made.run, made.sales);
        auto const use = uses.find(what.of);
        if (use == uses.end()) return 0;
        return pack_cost(*formulary_.costs.purchases[what.of], use->second).amount();
    }
    if (what.kind == Kind::preheat) {
        for (FormulaRun const& run : made.run.runs)
            if (!run.is_taken && run.loads && !run.loads->is_zero() &&
                book_.formulas[run.formula].oven->oven.index == what.of)
                return 1;
        return 0;
    }
    std::size_t const at = made.run.run_of[what.of];
    if (at == unresolved) return 0;
    FormulaRun const& run = made.run.runs[at];
    Formula const& formula = book_.formulas[what.of];
    switch (what.kind) {
    case Kind::ingredients: return run.made;
    case Kind::consumable: {
        Consumption const& use = formula.consumables[what.number];
        return ceiling(use.amount * run.driver(use));
    }
    case Kind::task: return run.driver(formula.labour[what.number]);
    case Kind::loads: return run.loads.value_or(0);
    case Kind::preheat:
    case Kind::packs: break; // above
    }
    return 0;
}

} // namespace groat
