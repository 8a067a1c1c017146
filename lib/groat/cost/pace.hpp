/// How what a formula takes keeps pace with what is wanted of it: exactly, or rounded up now and then. The rounding is that
/// of `explode`, said once for amounts and once for all amounts there may be.
#pragma once

#include <groat/cost/explosion.hpp>

#include <iterator>
#include <optional>
#include <vector>

namespace groat::steps_detail {

/// How a quantity goes with what is wanted: never below `rate` for each, never more than `slack` above that, and
/// always a multiple of `grain`.
struct Pace {
    Number rate = 1;
    Number slack = 0;
    Number grain = 0;
};

Number times(Number const& quantity, Number const& factor);
Number rounded_up(Number const& quantity, Number const& step);
Pace times(Pace const& pace, Number const& factor);
Pace rounded_up(Pace const& pace, Number const& step);

/// The largest number of which both are multiples.
Number common_grain(Number const& a, Number const& b);

/// What is made of one formula, in quantities or in paces.
template <class T> struct Making {
    T started; ///< pieces; nothing by mass
    T batches; ///< that it takes
    T made;
    T mixes;
    std::optional<T> loads;
};

Making<Number> making_of(FormulaRun const& run);

/// As `explode` makes it of what is wanted.
Making<Pace> making_of(Formula const& formula, Batch const& batch, Pace const& wanted);

/// The quantities of a formula that something is paid by, save what is paid once.
template <class T>
void add_paid(Formula const& formula, Making<T> const& making, std::vector<T>& paid) {
    bool is_by[std::size(per_words)] = {};
    for (Task const& task : formula.labour) is_by[static_cast<std::size_t>(task.per)] = true;
    auto const is_paid = [&](Per per) { return is_by[static_cast<std::size_t>(per)]; };
    T const begun = rounded_up(making.made, 1);
    paid.push_back(making.made); // what goes in
    if (formula.makes_pieces() && is_paid(Per::piece)) paid.push_back(making.started);
    if (is_paid(Per::batch)) paid.push_back(begun);
    if (is_paid(Per::mix)) paid.push_back(making.mixes);
    if (making.loads) paid.push_back(*making.loads);
    for (Consumption const& use : formula.consumables) {
        auto const add = [&](T const& driver) {
            paid.push_back(rounded_up(times(driver, use.amount), 1));
        };
        if (use.per == Per::piece) add(making.started);
        if (use.per == Per::mix) add(making.mixes);
        if (use.per == Per::load && making.loads) add(*making.loads);
        if (use.per == Per::batch) {
            add(making.made);
            add(begun);
        }
    }
}

} // namespace groat::steps_detail

#ifndef GROAT_COMPILED
#include <groat/cost/pace.ipp>
#endif
