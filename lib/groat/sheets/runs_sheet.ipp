#pragma once

#include <groat/sheets/runs_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/figures.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/shape_review.hpp>

#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>

namespace groat {

GROAT_INLINE Cell run_date(Run const& run) {
    return run.date ? Figures::short_day(*run.date) : Cell();
}

namespace runs_sheet_detail {

inline std::string stage_words(SeenStage stage) { return in_sentence(std::string(words(stage))); }

/// For programs: "before_portioning".
inline std::string stage_key(SeenStage stage) {
    std::string key(words(stage));
    std::replace(key.begin(), key.end(), ' ', '_');
    return key;
}

/// What to write into the formula, as it may be typed there, with a point. Where the books name several losses of a stage, how
/// they share it is up to the maker.
inline std::string to_write(StageLosses const& stage) {
    constexpr std::string_view usual[] = {"bowl", "baking", "breakage", "bowl"};
    std::string const share = decimal(*stage.written * 100, 1) + " %";
    if (stage.names.size() > 1)
        return fmt::format("{} for {} together", share, fmt::join(stage.names, " and "));
    return fmt::format("'{}: {}'",
                       stage.names.empty() ? usual[static_cast<std::size_t>(stage.stage)]
                                           : std::string_view(stage.names.front()),
                       share);
}

inline Table stages(RunLosses const& losses, Book const& book) {
    Formula const& formula = book.formulas[losses.formula];
    Table table = table_of<sheet_shapes::runs::losses>(
        fmt::format("{}, {} {}", in_sentence(formula.name), losses.runs.size(),
                    losses.runs.size() == 1 ? "run" : "runs"),
        {{"stage", "Lost"},
         {"runs", "Runs"},
         {"books", "Books"},
         {"pooled", "Seen"},
         {"mean", "Mean"},
         {"lowest", "Least"},
         {"highest", "Most"},
         {"more", "Lost more"},
         {"write", "To write"}});
    table.of = formula.name;
    for (StageLosses const& stage : losses.stages)
        table.rows.push_back({stage_key(stage.stage),
                              {stage_words(stage.stage), Figures::count(Number(stage.seen.size())),
                               Figures::percent(stage.books), Figures::percent(stage.pooled),
                               Figures::percent(stage.mean), Figures::percent(stage.lowest),
                               Figures::percent(stage.highest), Figures::count(Number(stage.more)),
                               Figures::percent(stage.written)}});
    if (losses.stages.empty())
        table.remark = "no run of it has the weights or counts that tell of a loss";
    return table;
}

/// What a stage's new figure means: the odds, and what it does to cost or weight.
inline std::string consequence(StageLosses const& stage, RunLosses const& losses,
                               Costing const& costing) {
    Book const& book = costing.book();
    Formula const& formula = book.formulas[losses.formula];
    Figures const figures(book.shop);
    bool const is_more = *stage.written > stage.books;
    std::string text = fmt::format(
        "{}, write {}: {} of {} runs lost {} than the books say. Were the books right, so "
        "one-sided a record would come by chance once in {} times. ",
        stage_words(stage.stage), to_write(stage), std::max(stage.more, stage.less),
        stage.seen.size(), is_more ? "more" : "less", figures.number(1 / stage.chance));
    if (stage.stage == SeenStage::after_portioning) {
        Batch const& batch = costing.formulary().with_losses[losses.formula];
        return text + fmt::format("A piece comes out at {}, not {}.",
                                  figures.mass(stage.seen_grams(batch.piece_grams)),
                                  figures.mass(batch.piece_grams));
    }
    Money const more = stage.costs_more * (formula.makes_pieces() ? 1 : 1000);
    return text + fmt::format("The ingredients of a {} cost {} {} than costed.",
                              formula.makes_pieces() ? "good piece" : "kilogram",
                              figures.full_amount(is_more ? more : -more, 2),
                              is_more ? "more" : "less");
}

inline Table runs(RunLosses const& losses, Book const& book) {
    Table table = table_of<sheet_shapes::runs::runs>("", {{"run", "Run"}, {"date", "Date"}});
    table.of = book.formulas[losses.formula].name;
    for (StageLosses const& stage : losses.stages)
        add_column<sheet_shapes::runs::runs>(
            table, {MemberOf<sheet_shapes::runs::runs>::named(stage_key(stage.stage)),
                    stage_words(stage.stage)});
    for (std::size_t const index : losses.runs) {
        Run const& run = book.runs[index];
        std::vector<Cell> cells{run.name, run_date(run)};
        for (StageLosses const& stage : losses.stages) {
            Cell cell;
            for (SeenLoss const& each : stage.seen)
                if (each.run == index) cell = Figures::percent(each.share());
            cells.push_back(std::move(cell));
        }
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
    }
    return table;
}

} // namespace runs_sheet_detail

GROAT_INLINE Sheet run_losses_sheet(std::vector<RunLosses> const& all, Costing const& costing) {
    Book const& book = costing.book();
    Sheet sheet = sheet_for(book.shop, "runs", "maker", "What the runs lost");
    for (RunLosses const& losses : all) {
        sheet.sections.emplace_back(runs_sheet_detail::stages(losses, book));
        Remarks news =
            remarks_of<sheet_shapes::runs::news>("", {}, book.formulas[losses.formula].name);
        for (StageLosses const& stage : losses.stages)
            if (stage.written)
                news.lines.push_back(runs_sheet_detail::consequence(stage, losses, costing));
        if (!news.lines.empty()) sheet.sections.emplace_back(std::move(news));
        if (!losses.stages.empty())
            sheet.sections.emplace_back(runs_sheet_detail::runs(losses, book));
    }
    sheet.sections.emplace_back(remarks_of<sheet_shapes::runs::how>(
        "How this is judged",
        {"Seen is what was lost of all that was made in these runs together. A loss to write is "
         "given where so many runs lie on one side of the books' figure that chance alone would "
         "do it in one case of sixteen at most: five runs of five, or eight of nine."}));
    return sheet;
}

} // namespace groat
