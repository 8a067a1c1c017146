/// Where a run of an item and what it is made in do not fit: a batch begun for a part of it, a mix or an oven load that is
/// not full, and the nearest runs of the item that fill them.
#pragma once

#include <groat/cost/engine.hpp>

#include <optional>
#include <vector>

namespace groat {

/// What a formula is made in.
enum class Vessel { batch, mix, load };

/// One that the run does not fill. Runs are in whole sale units of the item.
struct Misfit {
    FormulaRun run;
    Vessel vessel = Vessel::batch;
    Integer taken; ///< batches begun, mixes or loads
    Number filled; ///< how many of these it would fill, were they filled one after another
    std::optional<Integer>
        smaller; ///< the nearest run below that needs fewer: one more and it would not
    std::optional<Integer> larger; ///< the most that come out of those that are taken
};

/// What `sale` does not fill, formula by formula, from what is sold down to what is mixed first. A formula whose
/// leftover is kept is passed over, since the run does not pay for that; so are batches of which any part is made where
/// nothing is paid for each. A run above `most_times_larger` times this one is not thought of.
///
/// Fits are those of counts: a run fills its loads where one sale unit more would take another.
/// Example  two in a hundred break, an oven holds 24  ->  48 start 49 in 3 loads; 47 fill 2 of them, 70 fill 3
[[nodiscard]] std::vector<Misfit> misfits_of(Costing const& costing, Sale const& sale);

inline constexpr int most_times_larger = 4;

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/run_fit.ipp>
#endif
