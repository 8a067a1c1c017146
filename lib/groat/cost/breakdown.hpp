/// What an order costs and why: every figure with the quantity and rate that it came from. All amounts are
/// net of recoverable tax, exact, in the currency of the book.
#pragma once

#include <groat/cost/explosion.hpp>
#include <groat/model/kept.hpp>

#include <array>
#include <memory>
#include <string>
#include <vector>

namespace groat {

/// An amount for each category of cost.
struct CostByCategory {
    std::array<Money, category_count> amounts;
    Money variable_overhead = {}; ///< the part of the overhead that counts as variable

    [[nodiscard]] Money& operator[](Category category) {
        return amounts[static_cast<std::size_t>(category)];
    }
    [[nodiscard]] Money const& operator[](Category category) const {
        return amounts[static_cast<std::size_t>(category)];
    }
    [[nodiscard]] Money total() const;
    /// Ingredients and labour.
    [[nodiscard]] Money prime() const {
        return (*this)[Category::ingredients] + (*this)[Category::labour];
    }
    /// The categories that the shop counts as variable, and of overhead the lines that are.
    [[nodiscard]] Money variable(Shop const& shop) const;
    CostByCategory& operator+=(CostByCategory const& other);
    /// A part of every amount.
    [[nodiscard]] friend CostByCategory operator*(CostByCategory cost, Number const& part) {
        for (Money& amount : cost.amounts) amount *= part;
        cost.variable_overhead *= part;
        return cost;
    }
};

/// Where the ingredient cost goes; the four add up to it exactly.
struct YieldLoss {
    Money in_the_piece; ///< what is eaten, at the price as purchased
    Money trim;         ///< bought but cut away
    Money process;      ///< left in the bowl, baked off, broken
    Money rounding;     ///< whole pieces, batches and, where charged so, packs

    [[nodiscard]] Money total() const { return in_the_piece + trim + process + rounding; }
    /// The four in this order, and what part each is of their total; all 0 where there is none.
    [[nodiscard]] std::array<Money, 4> parts() const {
        return {in_the_piece, trim, process, rounding};
    }
    [[nodiscard]] std::array<Number, 4> shares() const;
};

struct IngredientUse {
    std::size_t ingredient = 0;
    Number usable;    ///< grams that go in; 0 for supplies
    Number bought;    ///< grams as purchased, or pieces of a supply
    Number bought_so; ///< of that, what does not depend on the yield of the offer
    std::shared_ptr<Purchase const> purchase = {};
    Money cost;    ///< as charged to the order; of what is made together its share
    Money eaten;   ///< its part of `YieldLoss::in_the_piece`; 0 for supplies
    Integer packs; ///< whole packs that it takes
    Money outlay;  ///< what those packs take out of the till, deposit included

    /// Whether it is charged otherwise than by what is used: by whole packs.
    [[nodiscard]] bool is_charged_by_packs() const { return cost != purchase->unit_cost * bought; }
};

struct FormulaUse {
    FormulaRun run;    ///< by itself, also where it is made together with others
    Money ingredients; ///< what it passes on to those who use it; likewise below
    Money consumables;
    Money labour;
    Money energy;

    [[nodiscard]] Money total() const { return ingredients + consumables + labour + energy; }
    /// What was paid for what is left over.
    [[nodiscard]] Money left_over() const {
        return run.leaves() ? total() * (run.leftover() / run.made) : Money();
    }
};

struct TaskUse {
    Task const* task = nullptr;
    std::string where; ///< the formula, sale unit or "order" it belongs to
    Number count;      ///< what its minutes are multiplied by
    Number minutes;    ///< in all
    Money cost;        ///< with on-cost; 0 for unattended time

    [[nodiscard]] Number paid_minutes() const { return task->is_unattended ? Number() : minutes; }
};

struct OvenUsed {
    std::size_t oven = 0;
    Number loads;
    Number minutes; ///< of all loads
    Number preheat; ///< minutes, once a session
    Number kilowatt_hours;
    Money cost;
};

struct OverheadUse {
    Overhead const* overhead = nullptr;
    Number quantity; ///< hours, pieces or orders; for shares 0
    Money base;      ///< what a share is taken of; for the others 0
    Money cost;
};

/// One line of what is sold.
struct CostLine {
    Sale sale;
    CostByCategory direct; ///< its own way through formulas, packing and labour
    CostByCategory cost;   ///< with its share of what is spent once for the order
    YieldLoss loss;        ///< adds up to its ingredient cost
    Number labour_minutes; ///< attended, its own
    Number oven_minutes;
    Number pieces; ///< sold; sale units where it is sold by mass
};

struct OrderCost {
    std::vector<CostLine> lines;
    CostByCategory total; ///< of the lines
    YieldLoss loss;       ///< of the order
    Money delivery_apart; ///< delivery that is charged on a line of its own and is in no line above
    std::vector<IngredientUse> ingredients; ///< in the order of the book
    std::vector<IngredientUse> supplies;
    std::vector<FormulaUse> formulas; ///< each after all that use it
    std::vector<TaskUse> tasks;
    std::vector<OvenUsed> ovens;
    std::vector<OverheadUse> overheads;
    Kept kept = {}; ///< the book that sale units, tasks and overheads stand in

    [[nodiscard]] Money all() const { return total.total() + delivery_apart; }
    [[nodiscard]] Number paid_minutes() const; ///< of all tasks
    /// What was paid for what is left over of all that was made for it.
    [[nodiscard]] Money left_over() const;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/breakdown.ipp>
#endif
