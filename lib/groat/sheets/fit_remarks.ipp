#pragma once

#include <groat/sheets/fit_remarks.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/shape_cost.hpp>

#include <string>
#include <string_view>

namespace groat {

namespace fit_remarks_detail {

inline std::string some(Number const& count, std::string_view one, std::string_view many,
                        Figures const& figures) {
    return fmt::format("{} {}", figures.number(count, 2), count == 1 ? one : many);
}

/// "49 started in 3 oven loads, enough for 2.04"
inline std::string taken(Misfit const& misfit, Formula const& formula, Figures const& figures) {
    FormulaRun const& run = misfit.run;
    auto const batches = [&](Number const& count) {
        return some(count, "batch", "batches", figures);
    };
    switch (misfit.vessel) {
    case Vessel::batch:
        if (!formula.batch_step.is_zero())
            return fmt::format("{} made, {} needed", batches(run.made),
                               figures.number(run.batches, 2));
        return fmt::format("{} begun for {}", batches(Number(misfit.taken)),
                           figures.number(run.made, 2));
    case Vessel::mix:
        return fmt::format("{} in {}, enough for {}", batches(run.made),
                           some(Number(misfit.taken), "mix", "mixes", figures),
                           figures.number(misfit.filled, 2));
    case Vessel::load:
        return fmt::format("{} in {}, enough for {}",
                           formula.makes_pieces() ? figures.number(run.started) + " started"
                                                  : batches(run.made),
                           some(Number(misfit.taken), "oven load", "oven loads", figures),
                           figures.number(misfit.filled, 2));
    }
    return {};
}

/// "a run of 47 or 70 fills what it takes"
inline std::string advice(Misfit const& misfit, SaleUnit const* unit, Figures const& figures) {
    std::string const of = unit == nullptr ? std::string() : fmt::format(" × {}", unit->name);
    auto const count = [&](Integer const& number) { return figures.number(Number(number)); };
    if (misfit.smaller && misfit.larger)
        return fmt::format("a run of {} or {}{} fills what it takes", count(*misfit.smaller),
                           count(*misfit.larger), of);
    if (misfit.smaller || misfit.larger)
        return fmt::format("a run of {}{} fills what it takes",
                           count(misfit.larger ? *misfit.larger : *misfit.smaller), of);
    return fmt::format("no run up to {} times as large fills it", most_times_larger);
}

} // namespace fit_remarks_detail

GROAT_INLINE Remarks fit_remarks(std::vector<Misfit> const& misfits, Book const& book,
                                 SaleUnit const* unit, Figures const& figures) {
    Remarks remarks = remarks_of<sheet_shapes::cost::run_fit>("", {});
    for (Misfit const& each : misfits) {
        Formula const& formula = book.formulas[each.run.formula];
        remarks.lines.push_back(fmt::format("{}: {}; {}.", in_sentence(formula.name),
                                            fit_remarks_detail::taken(each, formula, figures),
                                            fit_remarks_detail::advice(each, unit, figures)));
    }
    return remarks;
}

} // namespace groat
