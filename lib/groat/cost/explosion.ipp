#pragma once

#include <groat/cost/explosion.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

#include <algorithm>
#include <stdexcept>

namespace groat {

GROAT_INLINE std::vector<Sale> sales_of(Order const& order, Book const& book) {
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

GROAT_INLINE Number FormulaRun::driver(Per per, bool scales) const {
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

GROAT_INLINE Number good_of(FormulaRun const& run, Formulary const& formulary) {
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

GROAT_INLINE Explosion explode(Book const& book, Formulary const& formulary, Losses losses,
                               Wholes wholes, std::vector<Sale> const& sales, KeptGoods kept) {
    OnHand const nothing;
    return explosion_detail::Descent(book, formulary, losses, wholes, kept, nothing)
        .of_sales(sales);
}

GROAT_INLINE Explosion explode(Book const& book, Formulary const& formulary, Losses losses,
                               Wholes wholes, std::vector<Sale> const& sales,
                               OnHand const& on_hand) {
    return explosion_detail::Descent(book, formulary, losses, wholes, KeptGoods::made, on_hand)
        .of_sales(sales);
}

GROAT_INLINE Explosion explode_own_run(Book const& book, Formulary const& formulary,
                                       std::size_t formula) {
    OnHand const nothing;
    return explosion_detail::Descent(book, formulary, Losses::all, Wholes::all,
                                     KeptGoods::taken_below, nothing)
        .of_own_run(formula);
}

} // namespace groat
