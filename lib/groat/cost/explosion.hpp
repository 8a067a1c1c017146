/// From what is ordered down to the scale: how much of every formula, ingredient and supply is needed.
/// Each formula is met once, after all that use it, so that what two items share is made together.
#pragma once

#include <groat/cost/formulary.hpp>

#include <map>
#include <optional>
#include <vector>

namespace groat {

/// So many sale units of an item.
struct Sale {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr; ///< null: by the piece, of what is sold in no other way
    Number count = 1;               ///< sale units; a fraction only in menu costing

    /// Pieces, or grams of a formula made by mass, in one sale unit.
    [[nodiscard]] Number holds() const { return unit == nullptr ? Number(1) : unit->holds.amount; }
};

/// What an order sells, line by line. The book it stands in has been linked.
[[nodiscard]] std::vector<Sale> sales_of(Order const& order, Book const& book);

/// Whether pieces, batches, loads and supplies come whole, as on the bench, or as exact parts of a long
/// run, as menu costing wants them.
enum class Wholes { none, all };

/// What an order takes of one formula.
struct FormulaRun {
    std::size_t formula = 0;
    Number demand;               ///< pieces or grams that are wanted of it
    Number started;              ///< pieces portioned, those that will break included; 0 by mass
    Number batches;              ///< that the demand takes
    Number made;                 ///< after the batch policy
    Number begun;                ///< batches that are set up: a part of one as a whole one
    Number mixes;                ///< turns of the mixer
    std::optional<Number> loads; ///< of its oven
    bool is_taken = false;       ///< from what is kept: made another day, and so not made here
    Number from_stock;           ///< of the demand, that is there already

    /// Pieces or grams of the demand that are to be made.
    [[nodiscard]] Number to_make() const { return demand - from_stock; }
    [[nodiscard]] Number leftover() const { return made - batches; } ///< batches
    /// Whether something is made that nobody asked for.
    [[nodiscard]] bool leaves() const { return !is_taken && leftover().is_positive(); }
    /// That: pieces, or grams of a formula made by mass.
    [[nodiscard]] Number left_over(Batch const& batch) const {
        return leftover() * (batch.pieces.is_zero() ? batch.mass_out : batch.pieces);
    }
    /// What a supply or task that goes by `per` is multiplied by; by the batch that of a whole one, unless it
    /// scales.
    [[nodiscard]] Number driver(Per per, bool scales = false) const;
    template <class Effort> [[nodiscard]] Number driver(Effort const& effort) const {
        return driver(effort.per, effort.scales);
    }
};

struct Explosion {
    std::vector<FormulaRun> runs;    ///< of those needed, each after all that use it
    std::vector<std::size_t> run_of; ///< by formula: index in `runs`, or `unresolved`
};

/// Whether formulas of which the leftover is kept are made for what is asked for, as on the bench, or taken
/// from a run of their own, as every cost has it: their demand then goes no further down. `taken_below`: so is all but
/// what is sold itself, which is made for it.
enum class KeptGoods { made, taken, taken_below };

/// Pieces or grams of formulas that are there already, and need not be made.
using OnHand = std::map<std::size_t, Number>;

/// Runs the demand of `sales` down through all formulas; what is `on_hand` goes first.
///
///     to make = demand - min(demand, on hand)
///     pieces   good = ceil(to make), started = ceil(good / survival), batches = started / pieces per batch
///     mass     batches = to make / mass out
///     made     = ceil(batches / step) * step
///
/// without any `ceil` where `wholes` is none. All formulas reached must be sound.
[[nodiscard]] Explosion explode(Book const& book, Formulary const& formulary, Losses losses,
                                Wholes wholes, std::vector<Sale> const& sales,
                                KeptGoods kept = KeptGoods::made);
[[nodiscard]] Explosion explode(Book const& book, Formulary const& formulary, Losses losses,
                                Wholes wholes, std::vector<Sale> const& sales,
                                OnHand const& on_hand);

/// The run in which a formula is made that is kept, and all that is made for it.
///
///     batches  of the standard run that it states, else of a full mix, else one; up to the batch policy
///     pieces   all of the dough is portioned: started = floor(pieces per batch * made), at least one
///
/// It stands first in the result; what it uses and is kept as well is taken.
[[nodiscard]] Explosion explode_own_run(Book const& book, Formulary const& formulary,
                                        std::size_t formula);

/// What comes out of a run and can be used: good pieces, or grams of a formula by mass.
[[nodiscard]] Number good_of(FormulaRun const& run, Formulary const& formulary);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/explosion.ipp>
#endif
