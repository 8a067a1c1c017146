#pragma once

#include <groat/cost/kept_goods.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/rollup.hpp>

namespace groat {

namespace rollup_detail {

/// Whether a formula and all that it takes can be costed.
inline bool is_costable(Book const& book, Formulary const& formulary, std::size_t formula,
                        std::vector<bool> const& known) {
    Batch const& batch = formulary.with_losses[formula];
    if (!batch.is_sound) return false;
    for (BatchLine const& line : batch.lines)
        if (line.is_formula ? !known[line.index] : !formulary.costs.purchases[line.index])
            return false;
    for (Consumption const& use : book.formulas[formula].consumables)
        if (!use.supply.is_resolved() || !formulary.costs.purchases[use.supply.index]) return false;
    return true;
}

} // namespace rollup_detail

GROAT_INLINE std::vector<std::optional<KeptGood>> kept_goods(Book const& book,
                                                             Formulary const& formulary) {
    std::vector<std::optional<KeptGood>> kept(book.formulas.size());
    std::vector<bool> is_costable(book.formulas.size(), false);
    RollupTerms terms;
    terms.scope = Scope::run;
    for (std::size_t const index : formulary.order.sequence) {
        is_costable[index] = rollup_detail::is_costable(book, formulary, index, is_costable);
        if (!book.formulas[index].keeps_leftover || !is_costable[index]) continue;
        Explosion const run = explode_own_run(book, formulary, index);
        kept[index] = rollup_detail::Rollup(book, formulary, kept, run, {}, terms).own_run();
    }
    return kept;
}

} // namespace groat
