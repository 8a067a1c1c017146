#pragma once

#include <groat/price/run_fit.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/steps.hpp>

namespace groat {

namespace run_fit_detail {

inline bool pays(Formula const& formula, Per per) {
    auto const is = [&](auto const& each) { return each.per == per && !each.scales; };
    return std::any_of(formula.labour.begin(), formula.labour.end(), is) ||
           std::any_of(formula.consumables.begin(), formula.consumables.end(), is);
}

/// Of a vessel: how many a run takes, and how many it would fill. Absent where it does not matter.
struct Level {
    Integer taken;
    Number filled;
};
inline std::optional<Level> level(Formula const& formula, Batch const& batch, FormulaRun const& run,
                                  Vessel vessel) {
    switch (vessel) {
    case Vessel::batch:
        if (!formula.batch_step.is_zero())
            return Level{steps(run.made, formula.batch_step, Tie::up),
                         run.batches / formula.batch_step};
        if (!pays(formula, Per::batch)) return std::nullopt;
        return Level{ceiling(run.made).numerator(), run.made};
    case Vessel::mix:
        if (!formula.largest_mix || !pays(formula, Per::mix)) return std::nullopt;
        return Level{run.mixes.numerator(), run.made / *formula.largest_mix};
    case Vessel::load:
        if (!run.loads) return std::nullopt;
        return Level{run.loads->numerator(),
                     (formula.makes_pieces() ? run.started : run.made * batch.mass_in) /
                         formula.oven->holds.amount};
    }
    return std::nullopt;
}

class Fitter {
public:
    Fitter(Costing const& costing, Sale const& sale) : costing_(costing), sale_(sale) {}

    std::vector<Misfit> result() {
        Integer const count = ceiling(sale_.count).numerator();
        for (FormulaRun const& run : runs_at(count))
            for (Vessel const vessel : {Vessel::batch, Vessel::mix, Vessel::load})
                look_at(run, vessel, count);
        return std::move(misfits_);
    }

private:
    [[nodiscard]] std::vector<FormulaRun> runs_at(Integer const& count) const {
        Sale sale = sale_;
        sale.count = count;
        return explode(costing_.book(), costing_.formulary(), Losses::all, Wholes::all, {sale},
                       KeptGoods::taken)
            .runs;
    }

    [[nodiscard]] std::optional<Level> level_of(FormulaRun const& run, Vessel vessel) const {
        return level(costing_.book().formulas[run.formula],
                     costing_.formulary().with_losses[run.formula], run, vessel);
    }

    void look_at(FormulaRun const& run, Vessel vessel, Integer const& count) {
        if (costing_.book().formulas[run.formula].keeps_leftover) return;
        auto const here = level_of(run, vessel);
        if (!here) return;
        if (vessel == Vessel::mix && here->taken <= 1) return; // the least there is
        auto const taken = [&](Integer const& other) {
            for (FormulaRun const& each : runs_at(other))
                if (each.formula == run.formula) return level_of(each, vessel)->taken;
            return Integer(0);
        };
        Integer const most = count * most_times_larger;
        Integer const larger = last_alike(taken, count, most);
        if (larger == count) return; // one more takes another
        Misfit misfit{run, vessel, here->taken, here->filled, {}, {}};
        Integer const first = first_alike(taken, count, 1);
        if (first > 1) misfit.smaller = first - 1;
        if (larger < most) misfit.larger = larger;
        misfits_.push_back(std::move(misfit));
    }

    Costing const& costing_;
    Sale sale_;
    std::vector<Misfit> misfits_;
};

} // namespace run_fit_detail

GROAT_INLINE std::vector<Misfit> misfits_of(Costing const& costing, Sale const& sale) {
    return run_fit_detail::Fitter(costing, sale).result();
}

} // namespace groat
