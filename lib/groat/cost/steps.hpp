/// Where something whole begins: at which counts of one line, all others as they are, its sale unit can cost most. Only
/// these need costing to know the dearest of a range.
///
/// What a sale unit costs is made of quantities that are paid for (dough made, pieces started, batches begun, mixes,
/// oven loads, supplies rounded up, whole packs), each spread over what is wanted of its formula, and of what is paid
/// once and spread over ever more. Let `m` be above `k`. More is wanted of every formula at `m`, and the order as a
/// whole costs no less. So what is paid once falls on a unit more lightly at `m`; and if no quantity is more for each
/// that is wanted at `m` than at `k`, then neither is the cost of any formula's piece (from the formulas that use none
/// up to those that are sold: each is its own quantities times prices, and theirs), nor any category of the unit's cost,
/// nor its share of what the order pays once. `k` is at least as dear, and `m` need not be costed.
///
/// Whole ranges are passed over by a bound: between two counts a quantity is at most what it is at the upper, for at
/// least what is wanted at the lower; and a quantity that is rounded up is never more than so much above its even pace.
#pragma once

#include <groat/cost/explosion.hpp>

#include <algorithm>
#include <optional>
#include <vector>

namespace groat {

inline constexpr std::size_t most_counts_looked_at = 20000;

/// Counts of `sales[line]` from `first` to `last`, rising, `first` among them: no other count of the range costs more per
/// sale unit, in all or in any category, than one of these that is below it. Absent where more than `most_looked_at`
/// would have to be looked at.
///
/// Example  ten to the oven load, all else in proportion  ->  of 10 to 39: 10, 11 (and not 21, which shares its new
///          load with 20 others rather than with 10)
[[nodiscard]] std::optional<std::vector<Integer>> dearest_counts(
    Book const& book, Formulary const& formulary, std::vector<Sale> const& sales, std::size_t line,
    Integer const& first, Integer const& last, std::size_t most_looked_at = most_counts_looked_at);

/// The largest count from `from` to `most` at which a figure is what it is at `from`. It never falls as counts rise.
template <class Figure>
[[nodiscard]] Integer last_alike(Figure const& figure, Integer const& from, Integer const& most);
/// The smallest count from `least` to `from` at which it is so.
template <class Figure>
[[nodiscard]] Integer first_alike(Figure const& figure, Integer const& from, Integer const& least);

template <class Figure>
Integer last_alike(Figure const& figure, Integer const& from, Integer const& most) {
    auto const here = figure(from);
    Integer alike = from;
    Integer bound = std::max(most, from);
    while (alike < bound) {
        Integer const middle = (alike + bound + 1) / 2;
        if (figure(middle) == here)
            alike = middle;
        else
            bound = middle - 1;
    }
    return alike;
}

template <class Figure>
Integer first_alike(Figure const& figure, Integer const& from, Integer const& least) {
    auto const here = figure(from);
    Integer alike = from;
    Integer bound = std::min(least, from);
    while (bound < alike) {
        Integer const middle = (bound + alike) / 2;
        if (figure(middle) == here)
            alike = middle;
        else
            bound = middle + 1;
    }
    return alike;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/steps.ipp>
#endif
