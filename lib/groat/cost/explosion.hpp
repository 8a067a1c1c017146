/// From what is ordered down to the scale: how much of every formula, ingredient and supply is needed.
/// Each formula is met once, after all that use it, so that what two items share is made together.
#pragma once

#include <groat/cost/formulary.hpp>

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <vector>

namespace groat {

/// So many sale units of an item.
struct Sale {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr; ///< null: by the piece, without packing
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
    Number mixes;                ///< turns of the mixer
    std::optional<Number> loads; ///< of its oven

    [[nodiscard]] Number leftover() const { return made - batches; } ///< batches
    /// What a supply or task that goes by `per` is multiplied by.
    [[nodiscard]] Number driver(Per per) const;
};

struct Explosion {
    std::vector<FormulaRun> runs;    ///< of those needed, each after all that use it
    std::vector<std::size_t> run_of; ///< by formula: index in `runs`, or `unresolved`
};

/// Runs the demand of `sales` down through all formulas.
///
///     pieces   good = ceil(demand), started = ceil(good / survival), batches = started / pieces per batch
///     mass     batches = demand / mass out
///     made     = ceil(batches / step) * step
///
/// without any `ceil` where `wholes` is none. All formulas reached must be sound.
[[nodiscard]] Explosion explode(Book const& book, Formulary const& formulary, Losses losses,
                                Wholes wholes, std::vector<Sale> const& sales);

// ---------------------------------------------------------------------------------------------------

inline std::vector<Sale> sales_of(Order const& order, Book const& book) {
    std::vector<Sale> sales;
    for (OrderLine const& line : order.lines) {
        Formula const& formula = book.formulas[line.item.index];
        sales.push_back(
            {line.item.index,
             line.sale_unit.is_resolved() ? &formula.sold_as[line.sale_unit.index] : nullptr,
             line.count});
    }
    return sales;
}

inline Number FormulaRun::driver(Per per) const {
    switch (per) {
    case Per::order: return 1;
    case Per::batch: return made;
    case Per::mix: return mixes;
    case Per::load: return loads.value_or(0);
    case Per::piece: return started;
    case Per::sale_unit: break; // belongs to a sale, not to a formula
    }
    throw std::logic_error("a formula has no sale units");
}

/// The formulas that the sales take, each before all that it uses. Takes as long as there are of these, however
/// large the book is. Throws `std::logic_error` where formulas go round in a circle.
inline std::vector<std::size_t> needed_formulas(Formulary const& formulary,
                                                std::vector<Batch> const& batches,
                                                std::vector<Sale> const& sales) {
    std::vector<bool> is_needed(batches.size(), false);
    std::vector<std::size_t> needed;
    auto const take = [&](std::size_t formula) {
        if (is_needed[formula]) return;
        if (formulary.order.position[formula] == unresolved)
            throw std::logic_error("a formula that goes round in a circle was costed");
        is_needed[formula] = true;
        needed.push_back(formula);
    };
    for (Sale const& sale : sales) take(sale.formula);
    for (std::size_t i = 0; i < needed.size(); ++i)
        for (BatchLine const& line : batches[needed[i]].lines)
            if (line.is_formula) take(line.index);
    std::sort(needed.begin(), needed.end(), [&](std::size_t a, std::size_t b) {
        return formulary.order.position[a] > formulary.order.position[b];
    });
    return needed;
}

inline Explosion explode(Book const& book, Formulary const& formulary, Losses losses, Wholes wholes,
                         std::vector<Sale> const& sales) {
    auto const whole = [&](Number const& value) {
        return wholes == Wholes::all ? ceiling(value) : value;
    };
    std::vector<Batch> const& batches = formulary.batches(losses);
    Explosion result;
    result.run_of.assign(book.formulas.size(), unresolved);
    for (std::size_t const index : needed_formulas(formulary, batches, sales)) {
        result.run_of[index] = result.runs.size();
        result.runs.emplace_back().formula = index;
    }
    for (Sale const& sale : sales)
        result.runs[result.run_of[sale.formula]].demand += sale.count * sale.holds();
    for (FormulaRun& run : result.runs) {
        Formula const& formula = book.formulas[run.formula];
        Batch const& batch = batches[run.formula];
        if (formula.makes_pieces()) {
            run.started = whole(whole(run.demand) / batch.survival);
            run.batches = run.started / batch.pieces;
        } else {
            run.batches = run.demand / batch.mass_out;
        }
        run.made = formula.batch_step.is_zero() || wholes == Wholes::none
                       ? run.batches
                       : round_to(run.batches, formula.batch_step, Tie::up);
        run.mixes = whole(formula.largest_mix ? run.made / *formula.largest_mix : run.made);
        if (formula.oven) {
            Number const in_the_oven =
                formula.makes_pieces() ? run.started : run.made * batch.mass_in;
            run.loads = whole(in_the_oven / formula.oven->holds.amount);
        }
        for (BatchLine const& line : batch.lines) {
            if (!line.is_formula) continue;
            result.runs[result.run_of[line.index]].demand += line.amount * run.made;
        }
    }
    return result;
}

} // namespace groat
