/// What runs teach about losses: what was lost at each stage, against what the books say, and whether the
/// difference is more than chance. Exact; a run that lacks a figure is left out where it is needed.
///
/// Stages of a formula by the piece: before portioning (bowl, bag), after it (oven), and pieces. Of a formula
/// by mass the whole loss is one stage.
#pragma once

#include <groat/cost/engine.hpp>

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

enum class SeenStage { before_portioning, after_portioning, pieces, all };
inline constexpr std::array<std::string_view, 4> seen_stage_words = {
    "before portioning", "after portioning", "of pieces", "in all"};
[[nodiscard]] constexpr std::string_view words(SeenStage stage) {
    return seen_stage_words[static_cast<std::size_t>(stage)];
}

/// What one run lost at a stage: `1 - left / base`. Negative where more came out than went in.
struct SeenLoss {
    std::size_t run = 0; ///< index in the book
    Number base;         ///< grams or pieces that the stage began with
    Number left;

    [[nodiscard]] Number share() const { return 1 - left / base; }
};

/// One stage over all runs of a formula that tell of it; there is at least one.
struct StageLosses {
    SeenStage stage = SeenStage::before_portioning;
    std::vector<SeenLoss> seen;
    std::vector<std::string> names; ///< of the books' losses of this stage
    Number books;                   ///< what they take together: `1 - Π(1 - λ)`
    Number pooled;                  ///< what was lost in all of what the stage began with
    Number mean;                    ///< of the runs, each counting alike
    Number lowest;
    Number highest;
    std::size_t more = 0; ///< runs that lost more than the books say
    std::size_t less = 0;
    Number chance;                 ///< see `chance_of_one_sided`
    std::optional<Number> written; ///< the loss to write, in the books' place; absent: leave them
    Money costs_more;              ///< ingredients of a good piece, or gram, with the pooled loss

    /// What a piece weighs with the pooled loss, where the books' loss leaves it so many grams.
    [[nodiscard]] Number seen_grams(Number const& grams) const {
        return grams / (1 - books) * (1 - pooled);
    }
};

struct RunLosses {
    std::size_t formula = 0;
    std::vector<std::size_t> runs; ///< in reading order
    std::vector<StageLosses> stages;
};

/// How likely `more` and `less`, or something more one-sided, are where both are equally likely: twice
/// the sum of `n over k` for k from 0 to the lesser, over `2 ^ n`, and 1 at most.
///
/// Example  5 and 0  ->  1/16;  8 and 2  ->  7/64
/// Source   the sign test, two-sided
[[nodiscard]] Number chance_of_one_sided(std::size_t more, std::size_t less);

/// The evidence is enough where runs as one-sided as these would come by chance in one case of sixteen at most:
/// five runs of five, eight of nine, ten of twelve. The level is common practice, no source.
inline Number const enough_evidence{1, 16};

/// The losses of all runs of a formula. Runs that say nothing of a stage do not count there.
///
///     before portioning   dough / in; without dough, portioned * portion / in
///     after portioning    out / (good * dough / portioned); without dough, out / (good * portion)
///     pieces              good / portioned
///     by mass             out / in
///
/// where `in` is as weighed, else the books' mass of so many batches. The formula is sound.
[[nodiscard]] RunLosses run_losses(Costing const& costing, std::size_t formula);

/// Every formula that has runs, in the order of the book.
[[nodiscard]] std::vector<std::size_t> formulas_with_runs(Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/review/run_losses.ipp>
#endif
