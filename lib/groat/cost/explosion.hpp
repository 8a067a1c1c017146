/// From what is ordered down to the scale: how much of every formula, ingredient and supply is needed.
/// Each formula is met once, after all that use it, so that what two items share is made together.
#pragma once

#include <groat/cost/formulary.hpp>

#include <algorithm>
#include <map>
#include <optional>
#include <stdexcept>
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

inline Number FormulaRun::driver(Per per, bool scales) const {
    switch (per) {
    case Per::order: return 1;
    case Per::batch: return scales ? made : begun;
    case Per::mix: return mixes;
    case Per::load: return loads.value_or(0);
    case Per::piece: return started;
    case Per::sale_unit: break; // belongs to a sale, not to a formula
    }
    throw std::logic_error("a formula has no sale units");
}

inline Number good_of(FormulaRun const& run, Formulary const& formulary) {
    Batch const& batch = formulary.with_losses[run.formula];
    return batch.pieces.is_zero() ? batch.mass_out * run.made : run.started * batch.survival;
}

namespace explosion_detail {

class Descent {
public:
    Descent(Book const& book, Formulary const& formulary, Losses losses, Wholes wholes,
            KeptGoods kept, OnHand const& on_hand)
        : book_(book),
          formulary_(formulary),
          batches_(formulary.batches(losses)),
          is_whole_(wholes == Wholes::all),
          takes_kept_(kept != KeptGoods::made),
          makes_sold_(kept == KeptGoods::taken_below),
          on_hand_(on_hand) {}

    Explosion of_sales(std::vector<Sale> const& sales) {
        std::vector<std::size_t> roots;
        for (Sale const& sale : sales) roots.push_back(sale.formula);
        find_needed(roots);
        for (Sale const& sale : sales)
            result_.runs[result_.run_of[sale.formula]].demand += sale.count * sale.holds();
        for (FormulaRun& run : result_.runs) {
            if (run.is_taken)
                take(run);
            else
                size(run);
            run_down(run);
        }
        return std::move(result_);
    }

    Explosion of_own_run(std::size_t formula) {
        find_needed({formula});
        for (FormulaRun& run : result_.runs) {
            if (run.formula == formula)
                size_own(run);
            else if (run.is_taken)
                take(run);
            else
                size(run);
            run_down(run);
        }
        return std::move(result_);
    }

private:
    [[nodiscard]] bool is_taken(std::size_t formula) const {
        return takes_kept_ && book_.formulas[formula].keeps_leftover &&
               std::find(made_.begin(), made_.end(), formula) == made_.end();
    }
    [[nodiscard]] Number whole(Number const& value) const {
        return is_whole_ ? ceiling(value) : value;
    }

    /// A run for each formula that the roots take, each before all that it uses. Takes as long as there are of
    /// these, however large the book is. Throws `std::logic_error` where formulas go round in a circle.
    void find_needed(std::vector<std::size_t> const& roots) {
        if (makes_sold_) made_ = roots;
        result_.run_of.assign(book_.formulas.size(), unresolved);
        std::vector<std::size_t> needed;
        auto const need = [&](std::size_t formula) {
            if (result_.run_of[formula] != unresolved) return;
            if (formulary_.order.position[formula] == unresolved)
                throw std::logic_error("a formula that goes round in a circle was costed");
            result_.run_of[formula] = 0;
            needed.push_back(formula);
        };
        for (std::size_t const root : roots) need(root);
        for (std::size_t i = 0; i < needed.size(); ++i) {
            if (is_taken(needed[i])) continue;
            for (BatchLine const& line : batches_[needed[i]].lines)
                if (line.is_formula) need(line.index);
        }
        std::sort(needed.begin(), needed.end(), [&](std::size_t a, std::size_t b) {
            return formulary_.order.position[a] > formulary_.order.position[b];
        });
        result_.runs.resize(needed.size());
        for (std::size_t i = 0; i < needed.size(); ++i) {
            result_.run_of[needed[i]] = i;
            result_.runs[i].formula = needed[i];
            result_.runs[i].is_taken = is_taken(needed[i]);
        }
    }

    void take(FormulaRun& run) const {
        Batch const& batch = batches_[run.formula];
        run.batches =
            run.demand / (batch.pieces.is_zero() ? batch.mass_out : batch.pieces * batch.survival);
        run.made = run.batches;
    }

    void size(FormulaRun& run) const {
        Formula const& formula = book_.formulas[run.formula];
        Batch const& batch = batches_[run.formula];
        if (auto const there = on_hand_.find(run.formula); there != on_hand_.end())
            run.from_stock = std::min(run.demand, there->second);
        if (formula.makes_pieces()) {
            run.started = whole(whole(run.to_make()) / batch.survival);
            run.batches = run.started / batch.pieces;
        } else {
            run.batches = run.to_make() / batch.mass_out;
        }
        run.made = stepped(formula, run.batches);
        set_up(run, formula, batch);
    }

    void size_own(FormulaRun& run) const {
        Formula const& formula = book_.formulas[run.formula];
        Batch const& batch = batches_[run.formula];
        bool const in_pieces = formula.makes_pieces();
        if (!formula.standard_run)
            run.batches = formula.largest_mix.value_or(1);
        else if (in_pieces)
            run.batches = ceiling(ceiling(*formula.standard_run) / batch.survival) / batch.pieces;
        else
            run.batches = *formula.standard_run / batch.mass_out;
        run.made = stepped(formula, run.batches);
        if (in_pieces) {
            run.started = std::max(Number(1), floor(batch.pieces * run.made));
            if (run.started > batch.pieces * run.made) // a batch that is less than a piece
                run.made = stepped(formula, run.started / batch.pieces);
        }
        set_up(run, formula, batch);
        run.demand = good_of(run, formulary_);
        run.batches = run.made;
    }

    [[nodiscard]] Number stepped(Formula const& formula, Number const& batches) const {
        return formula.batch_step.is_zero() || !is_whole_
                   ? batches
                   : round_to(batches, formula.batch_step, Tie::up);
    }

    void set_up(FormulaRun& run, Formula const& formula, Batch const& batch) const {
        run.begun = whole(run.made);
        run.mixes = whole(formula.largest_mix ? run.made / *formula.largest_mix : run.made);
        if (!formula.oven) return;
        Number const in_the_oven = formula.makes_pieces() ? run.started : run.made * batch.mass_in;
        run.loads = whole(in_the_oven / formula.oven->holds.amount);
    }

    void run_down(FormulaRun const& run) {
        if (run.is_taken) return;
        for (BatchLine const& line : batches_[run.formula].lines)
            if (line.is_formula)
                result_.runs[result_.run_of[line.index]].demand += line.amount * run.made;
    }

    Book const& book_;
    Formulary const& formulary_;
    std::vector<Batch> const& batches_;
    bool is_whole_;
    bool takes_kept_;
    bool makes_sold_;
    std::vector<std::size_t> made_; ///< here, even if they are kept
    OnHand const& on_hand_;
    Explosion result_;
};

} // namespace explosion_detail

inline Explosion explode(Book const& book, Formulary const& formulary, Losses losses, Wholes wholes,
                         std::vector<Sale> const& sales, KeptGoods kept) {
    OnHand const nothing;
    return explosion_detail::Descent(book, formulary, losses, wholes, kept, nothing)
        .of_sales(sales);
}

inline Explosion explode(Book const& book, Formulary const& formulary, Losses losses, Wholes wholes,
                         std::vector<Sale> const& sales, OnHand const& on_hand) {
    return explosion_detail::Descent(book, formulary, losses, wholes, KeptGoods::made, on_hand)
        .of_sales(sales);
}

inline Explosion explode_own_run(Book const& book, Formulary const& formulary,
                                 std::size_t formula) {
    OnHand const nothing;
    return explosion_detail::Descent(book, formulary, Losses::all, Wholes::all,
                                     KeptGoods::taken_below, nothing)
        .of_own_run(formula);
}

} // namespace groat
