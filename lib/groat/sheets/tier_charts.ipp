#pragma once

#include <groat/sheets/tier_charts.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <string>

namespace groat {

GROAT_INLINE std::vector<Tier const*> tiers_of(Quote const& quote, std::size_t line) {
    std::vector<Tier const*> tiers;
    for (Tier const& each : quote.tiers)
        if (each.line == line) tiers.push_back(&each);
    return tiers;
}

namespace tier_charts_detail {

inline constexpr std::size_t fewest_tiers = 3;
inline constexpr std::size_t most_lines = 4;
inline constexpr std::size_t most_labels = 10; ///< tiers of a line that can bear their figures

/// Level over each tier.
inline ChartSeries prices(std::vector<Tier const*> const& tiers, Figures const& figures) {
    ChartSeries series{"Price each", {}, true};
    for (Tier const* each : tiers) {
        Money const price = each->price.money();
        series.points.push_back({Number(each->from), price.amount(),
                                 tiers.size() <= most_labels ? figures.amount(price) : ""});
        if (each->from < each->to) series.points.push_back({Number(each->to), price.amount()});
    }
    return series;
}

inline ChartSeries costs(std::vector<Tier const*> const& tiers, Figures const& figures) {
    ChartSeries series{"Cost each", {}, true};
    for (Tier const* each : tiers) {
        Money const& cost = each->burden.cost;
        series.points.push_back({Number(each->worst), cost.amount(),
                                 tiers.size() <= most_labels ? figures.amount(cost) : ""});
    }
    return series;
}

/// Axes that hold all points of the series.
inline void add_axes(Chart& chart, std::vector<Tier const*> const& tiers, Currency currency,
                     Figures const& figures) {
    auto const add = [&](Integer const& count) {
        chart.across.ticks.push_back({Number(count), figures.number(Number(count))});
    };
    chart.across.title = "Count";
    for (Tier const* each : tiers) add(each->from);
    if (tiers.back()->from < tiers.back()->to) add(tiers.back()->to);
    Number most;
    for (ChartSeries const& series : chart.series)
        for (ChartPoint const& point : series.points) most = std::max(most, point.y);
    chart.up.title = fmt::format("{} each", currency.code());
    for (Number const& at : even_ticks(most, decimal_step(figures.digits())))
        chart.up.ticks.push_back({at, figures.amount(Money(at, currency))});
}

/// "Price each: 22.00 from 1, 2.20 from 100. Cost each: 11.00 for 1, 1.10 for 100."
inline std::string said(Tier const& first, Tier const& last, Figures const& figures) {
    auto const count = [&](Integer const& number) { return figures.number(Number(number)); };
    return fmt::format("Price each: {} from {}, {} from {}. Cost each: {} for {}, {} for {}.",
                       figures.amount(first.price.money()), count(first.from),
                       figures.amount(last.price.money()), count(last.from),
                       figures.amount(first.burden.cost), count(first.worst),
                       figures.amount(last.burden.cost), count(last.worst));
}

} // namespace tier_charts_detail

GROAT_INLINE std::vector<Number> even_ticks(Number const& most, Number const& least) {
    Number step = 1;
    while (most.is_positive() && step * 5 >= most) step /= 10;
    while (step * 50 < most) step *= 10;
    // now `most` takes more than 5 and no more than 50 steps
    for (int const factor : {2, 5, 10})
        if (step * factor * 5 >= most) {
            step *= factor;
            break;
        }
    step = std::max(step, least);
    std::vector<Number> ticks{0, step};
    while (ticks.back() < most) ticks.push_back(ticks.back() + step);
    return ticks;
}

GROAT_INLINE std::vector<Chart> tier_charts(Quote const& quote, Book const& book,
                                            Figures const& figures) {
    namespace parts = tier_charts_detail;
    std::vector<Chart> charts;
    if (quote.lines.size() > parts::most_lines) return charts;
    for (std::size_t i = 0; i < quote.lines.size(); ++i) {
        auto const tiers = tiers_of(quote, i);
        if (tiers.size() < parts::fewest_tiers) continue;
        std::string const title = quote.lines[i].title(book);
        Chart chart{"tiers_drawn", quote.lines.size() == 1 ? "" : in_sentence(title), {}, {}, {}};
        chart.series = {parts::prices(tiers, figures), parts::costs(tiers, figures)};
        chart.said = parts::said(*tiers.front(), *tiers.back(), figures);
        chart.of = title;
        parts::add_axes(chart, tiers, book.shop.currency, figures);
        charts.push_back(std::move(chart));
    }
    return charts;
}

} // namespace groat
