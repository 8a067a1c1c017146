#pragma once

#include <groat/cost/pace.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

namespace groat::steps_detail {

GROAT_INLINE Number times(Number const& quantity, Number const& factor) {
    return quantity * factor;
}

GROAT_INLINE Number rounded_up(Number const& quantity, Number const& step) {
    return round_to(quantity, step, Tie::up);
}

GROAT_INLINE Pace times(Pace const& pace, Number const& factor) {
    return {pace.rate * factor, pace.slack * factor, pace.grain * factor};
}

GROAT_INLINE Pace rounded_up(Pace const& pace, Number const& step) {
    if ((pace.grain / step).is_whole()) return pace; // it comes out even by itself
    return {pace.rate, pace.slack + step, step};
}

GROAT_INLINE Number common_grain(Number const& a, Number const& b) {
    return {gcd(Integer(a.numerator() * b.denominator()), Integer(b.numerator() * a.denominator())),
            Integer(a.denominator() * b.denominator())};
}

GROAT_INLINE Making<Number> making_of(FormulaRun const& run) {
    return {run.started, run.batches, run.made, run.mixes, run.loads};
}

GROAT_INLINE Making<Pace> making_of(Formula const& formula, Batch const& batch,
                                    Pace const& wanted) {
    Making<Pace> making;
    if (formula.makes_pieces()) {
        making.started = rounded_up(times(rounded_up(wanted, 1), 1 / batch.survival), 1);
        making.batches = times(making.started, 1 / batch.pieces);
    } else {
        making.started = {0, 0, 0};
        making.batches = times(wanted, 1 / batch.mass_out);
    }
    making.made = formula.batch_step.is_zero() ? making.batches
                                               : rounded_up(making.batches, formula.batch_step);
    making.mixes = rounded_up(
        formula.largest_mix ? times(making.made, 1 / *formula.largest_mix) : making.made, 1);
    if (formula.oven)
        making.loads = rounded_up(
            times(formula.makes_pieces() ? making.started : times(making.made, batch.mass_in),
                  1 / formula.oven->holds.amount),
            1);
    return making;
}

} // namespace groat::steps_detail
