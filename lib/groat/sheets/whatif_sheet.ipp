#pragma once

#include <groat/sheets/whatif_sheet.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/shape_trial.hpp>
#include <groat/sheets/told.hpp>

namespace groat {

namespace whatif_sheet_detail {

inline Cell points(std::optional<Number> const& before, std::optional<Number> const& after) {
    if (!before || !after) return {};
    Number const change = (*after - *before) * 100;
    return Figure{(change.is_positive() ? "+" : "") + decimal(change, 1), *after - *before,
                  "percentage points"};
}

/// A change with its sign.
inline Cell signed_figure(Number const& shown, Number const& exact_figure, Figures const& figures) {
    Cell cell = figures.shown(shown, exact_figure, 0);
    if (auto* figure = std::get_if<Figure>(&cell); figure != nullptr && shown.is_positive())
        figure->shown = "+" + figure->shown;
    return cell;
}

/// The change between two figures as it is between what is shown of them.
inline Cell change(Money const& before, Money const& after, Figures const& figures) {
    Number const step = decimal_step(figures.digits());
    auto const shown = [&](Money const& money) {
        return round_to(money.amount(), step, Tie::half_even);
    };
    return signed_figure(shown(after) - shown(before), (after - before).amount(), figures);
}

inline Remarks changes(WhatIf const& trial) {
    Remarks remarks = remarks_of<sheet_shapes::whatif::changes>("What is changed", {});
    for (Change const& each : trial.changes) remarks.lines.push_back(in_sentence(each.words));
    return remarks;
}

inline Table lines(WhatIf const& trial, Figures const& figures) {
    Table table = table_of<sheet_shapes::whatif::lines>("Each, at the price it has",
                                                        {{"item"},
                                                         {"before", "Cost before"},
                                                         {"after", "Cost after"},
                                                         {"more", "Change"},
                                                         {"price", "Price"},
                                                         {"margin_before", "Margin before"},
                                                         {"margin_after", "Margin after"},
                                                         {"restoring", "Price to restore"}});
    bool has_loss = false;
    for (WhatIfLine const& line : trial.lines) {
        bool const loses = line.after.loses();
        has_loss = has_loss || loses;
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {in_sentence(line.before.title) + (loses ? " *" : ""),
              figures.money(line.before.burden.cost), figures.money(line.after.burden.cost),
              change(line.before.burden.cost, line.after.burden.cost, figures),
              figures.coins(line.before.price), Figures::percent(line.before.earned.margin),
              Figures::percent(line.after.earned.margin),
              line.restoring ? figures.coins(*line.restoring) : Cell()}});
        tell_named_sale<sheet_shapes::whatif::lines>(table.rows.back(), line.before.formula,
                                                     line.before.sold_as);
        std::vector<std::string> marks;
        if (loses) marks.emplace_back("loses");
        tell<sheet_shapes::whatif::lines>(table.rows.back(), "marks", std::move(marks));
    }
    if (has_loss) table.remark = "* loses money at its price";
    return table;
}

inline Table categories(WhatIf const& trial, Figures const& figures) {
    Table table = table_of<sheet_shapes::whatif::cost>(
        "What all of it costs",
        {{"category"}, {"before", "Cost before"}, {"after", "Cost after"}, {"more", "Change"}});
    // Shown changes are differences of shown figures, and all three columns add up.
    Number const step = decimal_step(figures.digits());
    std::vector<Number> exact_before;
    std::vector<Number> exact_change;
    for (Category const each : all_categories) {
        exact_before.push_back(trial.before[each].amount());
        exact_change.push_back(trial.more(each).amount());
    }
    Number const all_before = trial.before.total().amount();
    Number const all_after = trial.after.total().amount();
    Number const shown_all = round_to(all_before, step, Tie::half_even);
    Number const shown_all_after = round_to(all_after, step, Tie::half_even);
    auto const before = round_to_total(exact_before, step, shown_all);
    auto const more = round_to_total(exact_change, step, shown_all_after - shown_all);
    for (std::size_t i = 0; i < category_count; ++i) {
        if (exact_before[i].is_zero() && exact_change[i].is_zero()) continue;
        table.rows.push_back(
            {std::string(category_words[i]),
             {in_sentence(std::string(category_words[i])),
              figures.shown(before[i], exact_before[i], 0),
              figures.shown(before[i] + more[i], exact_before[i] + exact_change[i], 0),
              signed_figure(more[i], exact_change[i], figures)}});
    }
    table.rows.push_back(
        {"total",
         {std::string("Cost"), figures.shown(shown_all, all_before, 0),
          figures.shown(shown_all_after, all_after, 0),
          signed_figure(shown_all_after - shown_all, trial.more().amount(), figures)},
         Row::Kind::total});
    return table;
}

inline Sheet sheet(std::string kind, std::string title, Date date, Book const& book) {
    Sheet sheet = sheet_for(book.shop, std::move(kind), "maker", std::move(title));
    sheet.sections.emplace_back(facts_of<sheet_shapes::whatif::trial>(
        "", {{"date", "Prices of", Figures::day(date)},
             {"currency", "Currency", std::string(book.shop.currency.code())}}));
    return sheet;
}

} // namespace whatif_sheet_detail

GROAT_INLINE Sheet whatif_sheet(WhatIf const& trial, std::string const& subject, Book const& book) {
    Figures const figures(book.shop);
    Sheet sheet =
        whatif_sheet_detail::sheet("whatif", fmt::format("What if: {}", subject), trial.date, book);
    sheet.sections.emplace_back(whatif_sheet_detail::changes(trial));
    sheet.sections.emplace_back(whatif_sheet_detail::lines(trial, figures));
    sheet.sections.emplace_back(whatif_sheet_detail::categories(trial, figures));
    if (trial.before.amounts == trial.after.amounts)
        sheet.sections.emplace_back(remarks_of<sheet_shapes::whatif::no_effect>(
            "", {"Nothing that is changed is used here, or moves its cost."}));
    sheet.sections.emplace_back(remarks_of<sheet_shapes::whatif::remarks>(
        "", {"The books are not changed. Prices stay as they are; the price to restore meets the "
             "target again, or where a price is given the margin it had."}));
    return sheet;
}

GROAT_INLINE Sheet sensitivity_sheet(Sensitivities const& found, Date date,
                                     std::string const& subject, Book const& book) {
    std::vector<Sensitivity> const& all = found.all;
    constexpr std::size_t most = 20;
    Figures const figures(book.shop);
    Sheet sheet = whatif_sheet_detail::sheet(
        "sensitivity", fmt::format("What moves the cost of {}", subject), date, book);
    Table table = table_of<sheet_shapes::sensitivity::drivers>(
        "A tenth more of each", {{"driver"}, {"more", "Cost"}, {"share", "Of cost"}});
    table.columns.push_back(bar_column());
    for (std::size_t i = 0; i < all.size() && i < most; ++i)
        table.rows.push_back(
            {all[i].words,
             {in_sentence(all[i].words), whatif_sheet_detail::change({}, all[i].more, figures),
              Figures::percent(found.share_of(all[i]), 2), figures.money(all[i].more)}});
    if (all.size() > most) table.remark = fmt::format("{} more move it less.", all.size() - most);
    sheet.sections.emplace_back(std::move(table));
    return sheet;
}

GROAT_INLINE Sheet price_limit_sheet(std::vector<PriceLimit> const& limits, std::size_t ingredient,
                                     Date date, std::string const& subject, Book const& book) {
    Figures const figures(book.shop);
    Ingredient const& bought = book.ingredients[ingredient];
    PriceUnit const shown_for = price_unit(bought.costed_by());
    Number const& unit = shown_for.size;
    unsigned const more = shown_for.more;
    Sheet sheet = whatif_sheet_detail::sheet(
        "price_limit", fmt::format("How dear {} may become: {}", bought.name, subject), date, book);
    std::string const per = bought.is_supply() ? "each" : fmt::format("a {}", shown_for.noun);
    Table table = table_of<sheet_shapes::price_limit::limits>(
        fmt::format("Before the target is missed at the price it has, {}", per),
        {{"item"}, {"now", "Price now"}, {"limit", "Price limit"}, {"change", "Change"}});
    bool is_missed = false;
    for (PriceLimit const& each : limits) {
        bool const is_below = each.times && *each.times < 1;
        is_missed = is_missed || is_below;
        std::vector<Cell> cells{in_sentence(each.title) + (is_below ? " *" : ""),
                                figures.money(each.now * unit, more)};
        if (!each.times) {
            cells.emplace_back(std::string("does not matter"));
            cells.emplace_back();
        } else if (each.times->is_negative()) {
            cells.emplace_back(std::string("none"));
            cells.emplace_back();
        } else {
            cells.push_back(figures.money(each.now * unit * *each.times, more));
            cells.push_back(Figures::percent(*each.times - 1));
        }
        table.rows.push_back({fmt::format("{}", table.rows.size() + 1), std::move(cells)});
        tell_named_sale<sheet_shapes::price_limit::limits>(table.rows.back(), each.formula,
                                                           each.sold_as);
    }
    if (limits.empty())
        table.remark = "Nothing here has a target to miss: its price is given, and only judged.";
    if (is_missed) table.remark = "* misses its target already";
    sheet.sections.emplace_back(std::move(table));
    return sheet;
}

GROAT_INLINE Sheet costs_between_sheet(std::vector<CostSince> const& costs, Date to,
                                       std::string const& subject, Book const& book) {
    Figures const figures(book.shop);
    auto const less = [](CostSince const& a, CostSince const& b) { return a.cost < b.cost; };
    auto const [lowest, highest] = std::minmax_element(costs.begin(), costs.end(), less);
    Sheet sheet = sheet_for(book.shop, "costs_between", "maker",
                            fmt::format("What {} cost from day to day", subject));
    sheet.sections.emplace_back(facts_of<sheet_shapes::costs_between::range>(
        "", {{"from", "From", Figures::day(costs.front().date)},
             {"to", "To", Figures::day(to)},
             {"currency", "Currency", std::string(book.shop.currency.code())},
             {"lowest", "Lowest", figures.money(lowest->cost)},
             {"highest", "Highest", figures.money(highest->cost)}}));
    Table table =
        table_of<sheet_shapes::costs_between::costs>("", {{"since", "Since"}, {"cost", "Cost"}});
    table.columns.push_back(bar_column());
    for (CostSince const& each : costs)
        table.rows.push_back(
            {iso_date(each.date),
             {Figures::short_day(each.date), figures.money(each.cost), figures.money(each.cost)}});
    sheet.sections.emplace_back(std::move(table));
    return sheet;
}

} // namespace groat
