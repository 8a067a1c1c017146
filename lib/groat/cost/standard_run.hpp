/// The run in which something is usually made, when no order says how many.
#pragma once

#include <groat/cost/explosion.hpp>

namespace groat {

/// So many sale units as are usually made at once.
struct StandardRun {
    /// Who says so: the formula, the shop for all of its pieces, or nobody, and it is what a full mix gives, else
    /// one batch.
    enum class Said { formula, shop, nobody };

    Sale sale;
    Said said = Said::nobody;
    Number stated; ///< pieces or grams, as said; `sale` holds them rounded up to whole sale units
};

/// The standard run of a formula that is sound.
///
///     sale units = ceil(standard run / holds)
///     not said   = max(1, floor(good of a full mix, else of one batch / holds))
///
/// Example  a run of 60, sold in boxes of 8  ->  8 boxes
[[nodiscard]] StandardRun standard_run(Book const& book, Formulary const& formulary,
                                       std::size_t formula, SaleUnit const* unit);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/standard_run.ipp>
#endif
