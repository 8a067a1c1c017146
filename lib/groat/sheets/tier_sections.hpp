/// Prices by quantity on a quote: for the client what is asked from a count on, for the maker what that earns where it
/// earns least.
#pragma once

#include <groat/model/words.hpp>
#include <groat/price/quote.hpp>
#include <groat/sheets/figures.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/tier_charts.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace groat {

/// The tiers, and below them in words where no more is asked than for a larger count. Nothing of what anything costs
/// the maker is in it. Nothing where there are no tiers.
void add_client_tiers(Sheet& sheet, Quote const& quote, Book const& book, Figures const& figures,
                      Words const& words);

/// The tiers with what they cost and earn at their worst counts, what is to be thought over, and the pictures.
void add_maker_tiers(Sheet& sheet, Quote const& quote, Book const& book, Figures const& figures);

// ---------------------------------------------------------------------------------------------------

namespace tier_paper {

inline std::string row_key(Tier const& tier) { return fmt::format("{}", tier.line + 1); }

inline std::string title(Tier const& tier, Quote const& quote, Book const& book) {
    return in_sentence(quote.lines[tier.line].title(book));
}

/// "2", "2 or 3", "2 to 9"
inline std::string counts(Integer const& from, Integer const& to, Figures const& figures,
                          Words const& words) {
    std::string const first = figures.number(Number(from));
    std::string const last = figures.number(Number(to));
    if (from == to) return first;
    return from + 1 == to ? words("count or count", {{"from", first}, {"to", last}})
                          : words("count to count", {{"from", first}, {"to", last}});
}

/// "No more is asked for 2 or 3 than for 4: 146.00."
inline std::string cap_words(Tier const& tier, Figures const& figures, Words const& words) {
    return words("no more asked", {{"counts", counts(tier.cap->from, tier.to, figures, words)},
                                   {"more", figures.number(Number(tier.cap->more))},
                                   {"total", figures.amount(tier.cap->total.money())}});
}

/// What has to be known of the prices, in a line.
inline std::string holds(Quote const& quote, Words const& words) {
    std::vector<std::string> sentences;
    if (quote.lines.size() > 1) sentences.push_back(words("price by quantity holds"));
    bool const is_plain = quote.totals.to_minimum.is_zero() && quote.totals.rush.is_zero() &&
                          quote.totals.discount.is_zero();
    if (!is_plain) sentences.push_back(words("price by quantity before"));
    bool const is_ordered_apart =
        std::any_of(quote.tiers.begin(), quote.tiers.end(), [&](Tier const& tier) {
            QuoteLine const& line = quote.lines[tier.line];
            return line.count == tier.from && !(line.price == tier.price);
        });
    if (is_ordered_apart) sentences.push_back(words("price by quantity ordered"));
    return fmt::format("{}", fmt::join(sentences, " "));
}

inline Table client_table(Quote const& quote, Book const& book, Figures const& figures,
                          Words const& words) {
    Table table = table_of<sheet_shapes::client_quote::tiers>(words("price by quantity"),
                                                              {{"item"},
                                                               {"from", words("from count")},
                                                               {"to", words("to count")},
                                                               {"price", words("price each")}});
    table.remark = holds(quote, words);
    for (Tier const& tier : quote.tiers)
        table.rows.push_back({row_key(tier),
                              {title(tier, quote, book), Figures::count(Number(tier.from)),
                               Figures::count(Number(tier.to)), figures.coins(tier.price)}});
    return table;
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
                                                            {"last", "The last needs"}});
    table.remark = "Cost and margin are those at the worst count: the one at which the price earns "
                   "least.";
    for (Tier const& tier : quote.tiers)
        table.rows.push_back(
            {row_key(tier),
             {title(tier, quote, book), Figures::count(Number(tier.from)),
              Figures::count(Number(tier.to)), figures.coins(tier.price),
              Figures::count(Number(tier.worst.count)), figures.money(tier.worst.burden.cost),
              Figures::percent(tier.earned.margin), figures.coins(tier.last.price)}});
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

/// With the name of what it is about, where that is not plain.
inline std::string about(std::string const& title, Quote const& quote, std::string sentence) {
    return quote.lines.size() == 1 ? std::move(sentence) : title + ": " + sentence;
}

} // namespace tier_paper

inline void add_client_tiers(Sheet& sheet, Quote const& quote, Book const& book,
                             Figures const& figures, Words const& words) {
    namespace parts = tier_paper;
    if (quote.tiers.empty()) return;
    sheet.sections.emplace_back(parts::client_table(quote, book, figures, words));
    Remarks caps = remarks_of<sheet_shapes::client_quote::tier_caps>("", {});
    for (Tier const& tier : quote.tiers)
        if (tier.cap)
            caps.lines.push_back(parts::about(parts::title(tier, quote, book), quote,
                                              parts::cap_words(tier, figures, words)));
    if (!caps.lines.empty()) sheet.sections.emplace_back(std::move(caps));
}

inline void add_maker_tiers(Sheet& sheet, Quote const& quote, Book const& book,
                            Figures const& figures) {
    namespace parts = tier_paper;
    if (quote.tiers.empty()) return;
    sheet.sections.emplace_back(parts::maker_table(quote, book, figures));
    Remarks remarks = remarks_of<sheet_shapes::maker_quote::tier_remarks>("", {});
    for (Tier const& tier : quote.tiers) {
        std::string const title = parts::title(tier, quote, book);
        if (tier.cap)
            remarks.lines.push_back(
                parts::about(title, quote, parts::cap_words(tier, figures, Words::english())));
        if (tier.mending) remarks.lines.push_back(parts::mending_words(tier, title, figures));
    }
    if (!remarks.lines.empty()) sheet.sections.emplace_back(std::move(remarks));
    for (Chart& chart : tier_charts(quote, book, figures))
        sheet.sections.emplace_back(std::move(chart));
}

} // namespace groat
