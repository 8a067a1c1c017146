#pragma once

#include <groat/sheets/tier_sections.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/tier_charts.hpp>
#include <groat/sheets/tier_words.hpp>
#include <groat/sheets/told.hpp>

#include <string>

namespace groat {

namespace tier_words_detail {

/// That of its line among the lines of the order.
inline std::string row_key(Tier const& tier, Quote const& quote) {
    return fmt::format("{}", number_of_line(*quote.order, tier.line));
}

inline std::string title(Tier const& tier, Quote const& quote, Book const& book) {
    return in_sentence(quote.lines[tier.line].title(book));
}

inline Table maker_table(Quote const& quote, Book const& book, Figures const& figures) {
    Table table = table_of<sheet_shapes::maker_quote::tiers>(
        "Prices by quantity, the whole order costed anew", {{"item"},
                                                            {"from", "From"},
                                                            {"to", "To"},
                                                            {"price", "Price each"},
                                                            {"worst", "Worst for"},
                                                            {"cost", "Cost each"},
                                                            {"margin", "Margin"},
                                                            {"last", "Price at the last"}});
    table.remark = "Cost and margin are those at the worst count: the one at which the price earns "
                   "least.";
    for (Tier const& tier : quote.tiers) {
        table.rows.push_back(
            {row_key(tier, quote),
             {title(tier, quote, book), Figures::count(Number(tier.from)),
              Figures::count(Number(tier.to)), figures.coins(tier.price),
              Figures::count(Number(tier.worst)), figures.money(tier.burden.cost),
              Figures::percent(tier.earned.margin), figures.coins(tier.last.price)}});
        QuoteLine const& line = quote.lines[tier.line];
        tell_sale<sheet_shapes::maker_quote::tiers>(table.rows.back(), line.formula, line.unit,
                                                    book);
    }
    return table;
}

/// "Bun, from 1: 14.00 is far above the 2.75 that 16 need; with a start at 4 as well, 5.00 would do from there on."
inline std::string mending_words(Tier const& tier, std::string const& title,
                                 Figures const& figures) {
    return fmt::format(
        "{}, from {}: {} is far above the {} that {} would need; with a start at {} as "
        "well, {} would do from there on.",
        title, figures.number(Number(tier.from)), figures.amount(tier.price.money()),
        figures.amount(tier.last.price.money()), figures.number(Number(tier.to)),
        figures.number(Number(tier.mending->start)), figures.amount(tier.mending->price.money()));
}

} // namespace tier_words_detail

GROAT_INLINE void add_maker_tiers(Sheet& sheet, Quote const& quote, Book const& book,
                                  Figures const& figures) {
    namespace parts = tier_words_detail;
    if (quote.tiers.empty()) return;
    sheet.sections.emplace_back(parts::maker_table(quote, book, figures));
    Remarks remarks = remarks_of<sheet_shapes::maker_quote::tier_remarks>("", {});
    for (Tier const& tier : quote.tiers) {
        std::string const title = parts::title(tier, quote, book);
        if (tier.cap)
            remarks.lines.push_back(parts::about(
                title, quote.lines.size() == 1, parts::cap_words(tier, figures, Words::english())));
        if (tier.mending) remarks.lines.push_back(parts::mending_words(tier, title, figures));
    }
    if (!remarks.lines.empty()) sheet.sections.emplace_back(std::move(remarks));
    for (Chart& chart : tier_charts(quote, book, figures))
        sheet.sections.emplace_back(std::move(chart));
}

} // namespace groat
