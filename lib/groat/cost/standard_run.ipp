#pragma once

#include <groat/cost/standard_run.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

#include <optional>

namespace groat {

GROAT_INLINE StandardRun standard_run(Book const& book, Formulary const& formulary,
                                      std::size_t index, SaleUnit const* unit) {
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
