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

namespace making_detail {

void add(std::map<std::size_t, IngredientUse>& all, IngredientUse const& use, Number const& times);

void add(FormulaUse& sum, FormulaUse const& use, Number const& times);

} // namespace making_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/making.ipp>
#endif
