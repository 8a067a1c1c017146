#pragma once

#include <groat/review/run_losses.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/shares.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE Number chance_of_one_sided(std::size_t more, std::size_t less) {
    std::size_t const all = more + less;
    Number ways = 1; // all over k
    Number sum;
    Number both = 1; // 2 ^ all
    for (std::size_t k = 0; k < all; ++k) both *= 2;
    for (std::size_t k = 0; k <= std::min(more, less); ++k) {
        sum += ways;
        ways = ways * Number(all - k) / Number(k + 1);
    }
    return std::min(Number(1), 2 * sum / both);
}

namespace run_losses_detail {

struct Weights {
    std::optional<Number> in;
    std::optional<Number> portioned; ///< grams on the trays
    std::optional<Number> piece;     ///< of these, a piece
};

inline Weights weights(Run const& run, Formula const& formula, Batch const& batch) {
    Weights result;
    result.in = run.in_grams;
    if (!result.in && run.batches && !batch.unweighed) result.in = batch.mass_in * *run.batches;
    result.portioned = run.dough_grams;
    if (!formula.makes_pieces()) return result;
    if (run.dough_grams && run.portioned)
        result.piece = *run.dough_grams / Number(*run.portioned);
    else if (!batch.unweighed)
        result.piece = batch.portion_grams;
    if (!result.portioned && formula.portion && run.portioned)
        result.portioned = *result.piece * Number(*run.portioned);
    return result;
}

/// What a run tells of a stage, if anything.
inline std::optional<SeenLoss> seen(std::size_t index, SeenStage stage, Book const& book,
                                    Batch const& batch) {
    Run const& run = book.runs[index];
    Formula const& formula = book.formulas[run.formula.index];
    Weights const weighed = weights(run, formula, batch);
    switch (stage) {
    case SeenStage::before_portioning:
        if (!weighed.in || !weighed.portioned) return std::nullopt;
        return SeenLoss{index, *weighed.in, *weighed.portioned};
    case SeenStage::after_portioning:
        if (!run.good || run.good->is_zero() || !run.out_grams || !weighed.piece)
            return std::nullopt;
        return SeenLoss{index, *weighed.piece * Number(*run.good), *run.out_grams};
    case SeenStage::pieces:
        if (!run.portioned || !run.good) return std::nullopt;
        return SeenLoss{index, *run.portioned, *run.good};
    case SeenStage::all:
        if (!weighed.in || !run.out_grams) return std::nullopt;
        return SeenLoss{index, *weighed.in, *run.out_grams};
    }
    return std::nullopt;
}

inline bool is_at(SeenStage stage, LossStage loss) {
    return stage == SeenStage::all ? loss != LossStage::pieces
                                   : static_cast<int>(stage) == static_cast<int>(loss);
}

inline void judge(StageLosses& stage, Formula const& formula) {
    Number rest = 1;
    for (NamedLoss const& loss : formula.losses) {
        if (!is_at(stage.stage, loss.stage)) continue;
        rest *= loss.share.rest();
        stage.names.push_back(loss.name);
    }
    stage.books = 1 - rest;
    Number base;
    Number left;
    stage.lowest = stage.highest = stage.seen.front().share();
    for (SeenLoss const& each : stage.seen) {
        Number const share = each.share();
        base += each.base;
        left += each.left;
        stage.mean += share / Number(stage.seen.size());
        stage.lowest = std::min(stage.lowest, share);
        stage.highest = std::max(stage.highest, share);
        if (share > stage.books) ++stage.more;
        if (share < stage.books) ++stage.less;
    }
    stage.pooled = 1 - left / base;
    stage.chance = chance_of_one_sided(stage.more, stage.less);
    bool const is_on_their_side =
        stage.more > stage.less ? stage.pooled > stage.books : stage.pooled < stage.books;
    if (stage.chance <= enough_evidence && is_on_their_side && Loss::of(stage.pooled))
        stage.written = stage.pooled;
}

/// What an ingredient costs a good piece (or gram) grows as less of it is left; what a piece loses in the
/// oven makes it lighter, not dearer.
inline Money more_cost(StageLosses const& stage, Money const& ingredients) {
    if (stage.stage == SeenStage::after_portioning || stage.pooled >= 1) return ingredients * 0;
    return ingredients * ((1 - stage.books) / (1 - stage.pooled) - 1);
}

} // namespace run_losses_detail

GROAT_INLINE RunLosses run_losses(Costing const& costing, std::size_t formula) {
    Book const& book = costing.book();
    Formula const& made = book.formulas[formula];
    Batch const& batch = costing.formulary().with_losses[formula];
    RunLosses result{formula, {}, {}};
    for (std::size_t i = 0; i < book.runs.size(); ++i)
        if (book.runs[i].formula.index == formula) result.runs.push_back(i);
    Sale const one{formula, nullptr, 1};
    Money const ingredients =
        costing.findings(formula).has_errors()
            ? Money()
            : costing.cost({{one}, Wholes::none, {}, false}).total[Category::ingredients];
    std::vector<SeenStage> stages{SeenStage::all};
    if (made.makes_pieces())
        stages = {SeenStage::before_portioning, SeenStage::after_portioning, SeenStage::pieces};
    for (SeenStage const stage : stages) {
        StageLosses entry;
        entry.stage = stage;
        for (std::size_t const run : result.runs)
            if (auto seen = run_losses_detail::seen(run, stage, book, batch))
                entry.seen.push_back(*std::move(seen));
        if (entry.seen.empty()) continue;
        run_losses_detail::judge(entry, made);
        entry.costs_more = run_losses_detail::more_cost(entry, ingredients);
        result.stages.push_back(std::move(entry));
    }
    return result;
}

GROAT_INLINE std::vector<std::size_t> formulas_with_runs(Book const& book) {
    std::vector<bool> has(book.formulas.size(), false);
    for (Run const& run : book.runs)
        if (run.formula.is_resolved()) has[run.formula.index] = true;
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < has.size(); ++i)
        if (has[i]) result.push_back(i);
    return result;
}

} // namespace groat
