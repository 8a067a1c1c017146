#pragma once

#include <groat/cost/making.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE void Upward::add(Upward const& other, Number const& share) {
    ingredients += other.ingredients * share;
    consumables += other.consumables * share;
    labour += other.labour * share;
    energy += other.energy * share;
    labour_minutes += other.labour_minutes * share;
    oven_minutes += other.oven_minutes * share;
}

namespace making_detail {

GROAT_INLINE void add(std::map<std::size_t, IngredientUse>& all, IngredientUse const& use,
                      Number const& times) {
    IngredientUse& sum = all[use.ingredient];
    sum.ingredient = use.ingredient;
    sum.usable += use.usable * times;
    sum.bought += use.bought * times;
    sum.bought_so += use.bought_so * times;
    sum.cost += use.cost * times;
    sum.eaten += use.eaten * times;
}

GROAT_INLINE void add(FormulaUse& sum, FormulaUse const& use, Number const& times) {
    FormulaRun& run = sum.run;
    FormulaRun const& more = use.run;
    run.formula = more.formula;
    run.is_taken = more.is_taken;
    run.demand += more.demand * times;
    run.started += more.started * times;
    run.batches += more.batches * times;
    run.made += more.made * times;
    run.begun += more.begun * times;
    run.mixes += more.mixes * times;
    if (more.loads) run.loads = run.loads.value_or(0) + *more.loads * times;
    sum.ingredients += use.ingredients * times;
    sum.consumables += use.consumables * times;
    sum.labour += use.labour * times;
    sum.energy += use.energy * times;
}

} // namespace making_detail

GROAT_INLINE void Making::add_record(Making const& other, Number const& times) {
    for (auto const& [index, use] : other.ingredients) making_detail::add(ingredients, use, times);
    for (auto const& [index, use] : other.supplies) making_detail::add(supplies, use, times);
    for (auto const& [place, use] : other.formulas) making_detail::add(formulas[place], use, times);
    for (TaskUse const& use : other.tasks) {
        auto const same = std::find_if(tasks.begin(), tasks.end(), [&](TaskUse const& known) {
            return known.task == use.task && known.where == use.where;
        });
        if (same == tasks.end()) {
            tasks.push_back(
                {use.task, use.where, use.count * times, use.minutes * times, use.cost * times});
            continue;
        }
        same->count += use.count * times;
        same->minutes += use.minutes * times;
        same->cost += use.cost * times;
    }
    for (auto const& [index, used] : other.ovens) {
        OvenUsed& sum = ovens[index];
        sum.oven = index;
        sum.loads += used.loads * times;
        sum.minutes += used.minutes * times;
        sum.preheat += used.preheat * times;
        sum.kilowatt_hours += used.kilowatt_hours * times;
        sum.cost += used.cost * times;
    }
}

} // namespace groat
