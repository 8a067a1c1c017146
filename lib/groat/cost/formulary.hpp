/// Every formula of the book calculated for one batch: what goes in, ready to use and as bought, and what comes
/// out. Done once per book and date; orders only multiply it.
///
/// It is calculated twice, with the losses of making and without, since what those losses cost is the
/// difference between the two.
#pragma once

#include <groat/cost/batch.hpp>
#include <groat/cost/graph.hpp>
#include <groat/cost/offers_in_force.hpp>
#include <groat/cost/unit_cost.hpp>

#include <vector>

namespace groat {

struct Formulary {
    UnitCosts costs;
    FormulaOrder order;
    std::vector<Batch> with_losses;    ///< by formula
    std::vector<Batch> without_losses; ///< by formula
    std::vector<Diagnostics> problems; ///< by formula: its own only; warnings as well

    [[nodiscard]] std::vector<Batch> const& batches(Losses losses) const {
        return losses == Losses::all ? with_losses : without_losses;
    }
};

/// Calculates the whole book for a date. Never fails as a whole: what cannot be calculated says why, and who
/// does not need it is not held up.
[[nodiscard]] Formulary formulary_of(Book const& book, Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/formulary.ipp>
#endif
