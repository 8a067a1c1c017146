#pragma once

#include <groat/review/run_findings.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/model/convert.hpp>
#include <groat/review/run_losses.hpp>
#include <groat/review/variance.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace groat {

namespace run_findings_detail {

inline void judge_amounts(Run const& run, Book const& book, Diagnostics& found) {
    for (UsedFood const& used : run.used) {
        if (!used.item.is_resolved()) continue;
        auto const amount = amount_in(used.amount, book.ingredients[used.item.index]);
        if (!amount) found.error(used.item.origin, amount.error());
    }
    if (!run.order.is_resolved() || !run.formula.is_resolved()) return;
    auto const output = output_of(run, book.formulas[run.formula.index]);
    if (!output)
        found.warn(run.origin, output.error().code, output.error().what, output.error().help);
}

inline void judge_weights(StageLosses const& stage, Formula const& formula, Book const& book,
                          Diagnostics& found) {
    // What is boiled or soaked may gain; dough does not grow in the bowl, nor cookies in the oven.
    bool const can_only_lose = stage.stage == SeenStage::before_portioning ||
                               (stage.stage != SeenStage::pieces && formula.oven.has_value());
    if (!can_only_lose) return;
    for (SeenLoss const& each : stage.seen)
        if (each.left > each.base)
            found.warn(book.runs[each.run].origin, "more-out-than-in",
                       fmt::format("{} {} became {}", words(stage.stage), mass_text(each.base),
                                   mass_text(each.left)),
                       "weigh again, or correct the record");
}

inline void judge_books(StageLosses const& stage, Formula const& formula, Diagnostics& found) {
    if (!stage.written) return;
    found.warn(
        formula.origin, "loss-not-as-seen",
        fmt::format("'{}' loses {} % {} by the books, but {} of {} runs lost {}: {} % in total",
                    formula.name, decimal_at_most(stage.books * 100, 2), words(stage.stage),
                    std::max(stage.more, stage.less), stage.seen.size(),
                    stage.more > stage.less ? "more" : "less",
                    decimal_at_most(stage.pooled * 100, 1)),
        "'groat runs' shows them, and what to write");
}

} // namespace run_findings_detail

GROAT_INLINE Diagnostics run_findings(Costing const& costing) {
    Book const& book = costing.book();
    Diagnostics found;
    for (Run const& run : book.runs) run_findings_detail::judge_amounts(run, book, found);
    for (std::size_t const index : formulas_with_runs(book)) {
        if (!costing.formulary().with_losses[index].is_sound) continue;
        for (StageLosses const& stage : run_losses(costing, index).stages) {
            run_findings_detail::judge_weights(stage, book.formulas[index], book, found);
            run_findings_detail::judge_books(stage, book.formulas[index], found);
        }
    }
    return found;
}

} // namespace groat
