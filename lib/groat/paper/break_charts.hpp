/// What one costs at other quantities, for the eye: the table of breaks says the same in figures.
#pragma once

#include <groat/model/words.hpp>
#include <groat/paper/figures.hpp>
#include <groat/trade/quote.hpp>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace groat {

/// The price each of the one line against its count. None where there are fewer than three counts, or several lines:
/// then the table says it better. Nothing of what anything costs the maker is in it.
[[nodiscard]] std::optional<Chart> client_break_chart(Quote const& quote, Book const& book,
                                                      Figures const& figures, Words const& words);

/// Price and cost each of each line, a chart for each. None where there are fewer than three counts, or more lines than
/// anybody would look at.
[[nodiscard]] std::vector<Chart> maker_break_charts(Quote const& quote, Book const& book,
                                                    Figures const& figures);

/// Ticks from 0 in steps of 2, 5 or 10 times a power of ten, but of `least` at least: three to five above 0 where
/// that allows it, the last not below `most`.
/// Example  81 by 0.01  ->  0, 20, 40, 60, 80, 100
[[nodiscard]] std::vector<Number> even_ticks(Number const& most, Number const& least);

// ---------------------------------------------------------------------------------------------------

namespace break_charts {

inline constexpr std::size_t fewest_counts = 3;
inline constexpr std::size_t most_lines = 4;
inline constexpr std::size_t most_labels = 10; ///< points of a line that can bear their figures

/// The breaks of a line, by count, each count once.
inline std::vector<BreakPrice const*> of_line(Quote const& quote, std::size_t line) {
    std::vector<BreakPrice const*> all;
    for (BreakPrice const& each : quote.breaks)
        if (each.line == line) all.push_back(&each);
    std::stable_sort(all.begin(), all.end(),
                     [](auto const* a, auto const* b) { return a->count < b->count; });
    all.erase(std::unique(all.begin(), all.end(),
                          [](auto const* a, auto const* b) { return a->count == b->count; }),
              all.end());
    return all;
}

inline ChartSeries prices(std::string name, std::vector<BreakPrice const*> const& breaks,
                          Figures const& figures) {
    ChartSeries series{std::move(name), {}, true};
    bool const has_labels = breaks.size() <= most_labels;
    for (BreakPrice const* each : breaks)
        series.points.push_back({Number(each->count), each->price.money().amount(),
                                 has_labels ? figures.amount(each->price.money()) : std::string()});
    return series;
}

/// "Bun: 22.00 for 1, 2.20 for 100."
inline std::string from_to(std::string_view what, std::vector<BreakPrice const*> const& breaks,
                           std::string const& at_first, std::string const& at_last,
                           Figures const& figures, Words const& words) {
    auto const count = [&](BreakPrice const& each) {
        return words("for a count", {{"count", figures.number(Number(each.count))}});
    };
    return fmt::format("{}: {} {}, {} {}.", what, at_first, count(*breaks.front()), at_last,
                       count(*breaks.back()));
}

/// Axes that hold all points of the series.
inline void add_axes(Chart& chart, std::vector<BreakPrice const*> const& breaks, Currency currency,
                     Figures const& figures, Words const& words) {
    chart.across.title = words("count");
    for (BreakPrice const* each : breaks)
        chart.across.ticks.push_back({Number(each->count), figures.number(Number(each->count))});
    Number most;
    for (ChartSeries const& series : chart.series)
        for (ChartPoint const& point : series.points) most = std::max(most, point.y);
    for (Number const& at : even_ticks(most, decimal_step(figures.digits())))
        chart.up.ticks.push_back({at, figures.amount(Money(at, currency))});
}

} // namespace break_charts

inline std::vector<Number> even_ticks(Number const& most, Number const& least) {
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

inline std::optional<Chart> client_break_chart(Quote const& quote, Book const& book,
                                               Figures const& figures, Words const& words) {
    namespace parts = break_charts;
    if (quote.lines.size() != 1) return std::nullopt;
    auto const breaks = parts::of_line(quote, 0);
    if (breaks.size() < parts::fewest_counts) return std::nullopt;
    std::string const title = in_sentence(quote.lines.front().title(book));
    Chart chart{"quantity_breaks_drawn", "", {}, {}, {parts::prices(title, breaks, figures)}};
    chart.said = parts::from_to(title, breaks, figures.amount(breaks.front()->price.money()),
                                figures.amount(breaks.back()->price.money()), figures, words);
    chart.up.title = words("price each");
    parts::add_axes(chart, breaks, book.shop.currency, figures, words);
    return chart;
}

inline std::vector<Chart> maker_break_charts(Quote const& quote, Book const& book,
                                             Figures const& figures) {
    namespace parts = break_charts;
    Words const& words = Words::english();
    std::vector<Chart> charts;
    if (quote.lines.size() > parts::most_lines) return charts;
    for (std::size_t i = 0; i < quote.lines.size(); ++i) {
        auto const breaks = parts::of_line(quote, i);
        if (breaks.size() < parts::fewest_counts) return {};
        ChartSeries costs{"Cost each", {}, true};
        for (BreakPrice const* each : breaks)
            costs.points.push_back(
                {Number(each->count), each->cost.amount(),
                 breaks.size() <= parts::most_labels ? figures.amount(each->cost) : std::string()});
        std::string const title = quote.lines[i].title(book);
        Chart chart{"breaks_drawn",
                    quote.lines.size() == 1 ? "" : in_sentence(title),
                    {},
                    {},
                    {parts::prices("Price each", breaks, figures), costs}};
        chart.said =
            parts::from_to("Price each", breaks, figures.amount(breaks.front()->price.money()),
                           figures.amount(breaks.back()->price.money()), figures, words) +
            ' ' +
            parts::from_to("Cost each", breaks, figures.amount(breaks.front()->cost),
                           figures.amount(breaks.back()->cost), figures, words);
        chart.of = title;
        chart.up.title = fmt::format("{} each", book.shop.currency.code());
        parts::add_axes(chart, breaks, book.shop.currency, figures, words);
        charts.push_back(std::move(chart));
    }
    return charts;
}

} // namespace groat
