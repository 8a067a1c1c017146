#pragma once

#include <groat/price/quote_for_client.hpp>

#include <groat/base/linkage.hpp>
#include <groat/price/contents.hpp>

#include <algorithm>

namespace groat {

namespace quote_for_client_detail {

inline std::vector<ClientQuote::Line> lines_of(Quote const& quote, Book const& book) {
    std::vector<ClientQuote::Line> lines(quote.lines.size() + quote.extras.size());
    for (std::size_t i = 0; i < quote.lines.size(); ++i) {
        QuoteLine const& line = quote.lines[i];
        std::size_t const number = number_of_line(*quote.order, i);
        lines[number - 1] = {number,
                             line.title(book),
                             book.formulas[line.formula].name,
                             line.unit == nullptr ? std::string() : line.unit->name,
                             line.count,
                             line.price,
                             line.amount};
    }
    for (std::size_t i = 0; i < quote.extras.size(); ++i) {
        QuoteExtra const& extra = quote.extras[i];
        std::size_t const number = number_of_extra(*quote.order, i);
        lines[number - 1] = {number,      extra.line->text, {}, {}, Number(extra.line->count),
                             extra.price, extra.amount};
    }
    return lines;
}

inline ClientQuote::Tier tier_of(Tier const& tier, Quote const& quote) {
    QuoteLine const& line = quote.lines[tier.line];
    ClientQuote::Tier told{number_of_line(*quote.order, tier.line) - 1,
                           tier.from,
                           tier.to,
                           tier.price,
                           line.count == tier.from && !(line.price == tier.price),
                           {}};
    if (tier.cap) told.cap = {tier.cap->from, tier.cap->more, tier.cap->total};
    return told;
}

/// The formulas sold, each once, in the order of the lines.
inline std::vector<ClientQuote::Item> items_of(Quote const& quote, Book const& book) {
    std::vector<std::size_t> formulas;
    std::vector<ClientQuote::Item> items;
    for (QuoteLine const& line : quote.lines) {
        if (std::find(formulas.begin(), formulas.end(), line.formula) != formulas.end()) continue;
        formulas.push_back(line.formula);
        Contents contents = contents_of(book, line.formula);
        items.push_back({book.formulas[line.formula].name, std::move(contents.allergens),
                         std::move(contents.keeping)});
    }
    return items;
}

} // namespace quote_for_client_detail

GROAT_INLINE ClientQuote quote_for_client(Quote const& quote, Book const& book) {
    Order const& order = *quote.order;
    ClientQuote told{order.id,
                     order.client,
                     order.notes,
                     order.date.value_or(quote.date),
                     order.due,
                     quote.valid_until,
                     quote.is_validity_cut,
                     quote_for_client_detail::lines_of(quote, book),
                     {},
                     quote.totals,
                     order.deposit.value_or(book.shop.deposit),
                     quote_for_client_detail::items_of(quote, book)};
    for (Tier const& tier : quote.tiers)
        told.tiers.push_back(quote_for_client_detail::tier_of(tier, quote));
    return told;
}

} // namespace groat
