/// What is made at one go, and what that costs: the record of every thing used, every task, every oven, and the
/// lines of what is sold with their own cost. Overhead, and what is spent once for an order, come later.
#pragma once

#include <groat/cost/breakdown.hpp>

#include <functional>
#include <map>
#include <vector>

namespace groat {

/// What a formula hands on to those who use it, each in the share of its demand that they took.
struct Upward {
    Money ingredients;
    Money consumables;
    Money labour;
    Money energy;
    Number labour_minutes; ///< attended
    Number oven_minutes;   ///< with preheating

    void add(Upward const& other, Number const& share);
};

struct Making {
    std::vector<CostLine> lines; ///< `direct` without overhead; the rest of their cost is empty
    std::map<std::size_t, IngredientUse> ingredients; ///< by ingredient; packs and outlay are empty
    std::map<std::size_t, IngredientUse> supplies;
    std::map<std::size_t, FormulaUse, std::greater<>>
        formulas; ///< by place in the order of formulas
    std::vector<TaskUse> tasks;
    std::map<std::size_t, OvenUsed> ovens;

    /// So many times the record of `other` on top of this one; its lines stay its own.
    void add_record(Making const& other, Number const& times);
};

/// Something that is kept, in the run of its own in which it is made: what a piece or gram of it costs.
struct KeptGood {
    FormulaRun run; ///< of which so much good comes
    Number good;    ///< pieces or grams
    Upward unit;    ///< of one piece or gram
    Making one;     ///< its record
};

// ---------------------------------------------------------------------------------------------------

inline void Upward::add(Upward const& other, Number const& share) {
    ingredients += other.ingredients * share;
    consumables += other.consumables * share;
    labour += other.labour * share;
    energy += other.energy * share;
    labour_minutes += other.labour_minutes * share;
    oven_minutes += other.oven_minutes * share;
}

namespace making_detail {

inline void add(std::map<std::size_t, IngredientUse>& all, IngredientUse const& use,
                Number const& times) {
    IngredientUse& sum = all[use.ingredient];
    sum.ingredient = use.ingredient;
    sum.usable += use.usable * times;
    sum.bought += use.bought * times;
    sum.bought_so += use.bought_so * times;
    sum.cost += use.cost * times;
    sum.eaten += use.eaten * times;
}

inline void add(FormulaUse& sum, FormulaUse const& use, Number const& times) {
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

inline void Making::add_record(Making const& other, Number const& times) {
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
