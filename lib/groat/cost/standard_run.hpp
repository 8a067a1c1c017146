/// The run in which something is usually made, when no order says how many.
#pragma once

#include <groat/cost/explosion.hpp>

#include <optional>

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

// ---------------------------------------------------------------------------------------------------

inline StandardRun standard_run(Book const& book, Formulary const& formulary, std::size_t index,
                                SaleUnit const* unit) {
    Formula const& formula = book.formulas[index];
    StandardRun run;
    run.sale = {index, unit, 1};
    std::optional<Number> stated = formula.standard_run;
    run.said = StandardRun::Said::formula;
    if (!stated && formula.makes_pieces()) {
        stated = book.shop.standard_run;
        run.said = StandardRun::Said::shop;
    }
    if (stated) {
        run.stated = *stated;
        run.sale.count = ceiling(run.stated / run.sale.holds());
        return run;
    }
    run.said = StandardRun::Said::nobody;
    Batch const& batch = formulary.with_losses[index];
    Number const batches = formula.largest_mix.value_or(1);
    run.stated = formula.makes_pieces() ? floor(batch.pieces * batches * batch.survival)
                                        : batch.mass_out * batches;
    run.sale.count = std::max(Number(1), floor(run.stated / run.sale.holds()));
    return run;
}

} // namespace groat
