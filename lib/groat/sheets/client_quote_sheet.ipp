#pragma once

#include <groat/sheets/client_quote_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/payable_rows.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/tier_words.hpp>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>
#include <vector>

namespace groat {

namespace client_quote_sheet_detail {

inline Table lines(ClientQuote const& quote, Sender const& shop, Figures const& figures,
                   Words const& words) {
    constexpr SectionShape const& shape = sheet_shapes::client_quote::lines;
    Table table = table_of<shape>("", {{"item"},
                                       {"count", words("count")},
                                       {"unit_price", words("price each")},
                                       {"amount", words("amount")}});
    for (ClientQuote::Line const& line : quote.lines) {
        table.rows.push_back({fmt::format("{}", line.number),
                              {in_sentence(line.title), Figures::count(line.count),
                               figures.coins(line.price), figures.coins(line.amount)}});
        quote_sheet_detail::tell_line<shape>(table.rows.back(), line);
    }
    for (Row& row :
         quote_sheet_detail::total_rows(quote.totals, quote.deposit, shop, figures, words, 4))
        table.rows.push_back(std::move(row));
    return table;
}

/// Whether more than one line is an item.
inline bool has_several(ClientQuote const& quote) {
    return std::count_if(quote.lines.begin(), quote.lines.end(),
                         [](ClientQuote::Line const& line) { return !line.formula.empty(); }) > 1;
}

/// What has to be known of the prices by quantity, in a line.
inline std::string holds(ClientQuote const& quote, Words const& words) {
    std::vector<std::string> sentences;
    if (has_several(quote)) sentences.push_back(words("price by quantity holds"));
    bool const is_plain = quote.totals.to_minimum.is_zero() && quote.totals.rush.is_zero() &&
                          quote.totals.discount.is_zero();
    if (!is_plain) sentences.push_back(words("price by quantity before"));
    if (std::any_of(quote.tiers.begin(), quote.tiers.end(),
                    [](ClientQuote::Tier const& tier) { return tier.is_ordered_apart; }))
        sentences.push_back(words("price by quantity ordered"));
    return fmt::format("{}", fmt::join(sentences, " "));
}

/// The tiers, and below them in words where no more is asked than for a larger count. Nothing where there are none.
inline void add_tiers(Sheet& sheet, ClientQuote const& quote, Figures const& figures,
                      Words const& words) {
    if (quote.tiers.empty()) return;
    constexpr SectionShape const& shape = sheet_shapes::client_quote::tiers;
    Table table = table_of<shape>(words("price by quantity"), {{"item"},
                                                               {"from", words("from count")},
                                                               {"to", words("to count")},
                                                               {"price", words("price each")}});
    table.remark = holds(quote, words);
    Remarks caps = remarks_of<sheet_shapes::client_quote::tier_caps>("", {});
    for (ClientQuote::Tier const& tier : quote.tiers) {
        ClientQuote::Line const& line = quote.lines[tier.line];
        std::string const title = in_sentence(line.title);
        table.rows.push_back({fmt::format("{}", line.number),
                              {title, Figures::count(Number(tier.from)),
                               Figures::count(Number(tier.to)), figures.coins(tier.price)}});
        quote_sheet_detail::tell_line<shape>(table.rows.back(), line);
        if (tier.cap)
            caps.lines.push_back(tier_words_detail::about(
                title, !has_several(quote), tier_words_detail::cap_words(tier, figures, words)));
    }
    sheet.sections.emplace_back(std::move(table));
    if (!caps.lines.empty()) sheet.sections.emplace_back(std::move(caps));
}

inline Table contains(ClientQuote const& quote, Words const& words) {
    constexpr SectionShape const& shape = sheet_shapes::client_quote::contains;
    Table table = table_of<shape>(words("what is in it"), {{"item"}, {"words"}});
    for (ClientQuote::Item const& item : quote.items) {
        std::string text = allergen_words(item.allergens, words);
        if (std::string const keeping = keeping_words(item.keeping, words); !keeping.empty())
            text += "; " + keeping;
        table.rows.push_back({item.name, {in_sentence(item.name), in_sentence(text) + "."}});
        tell<shape>(table.rows.back(), "allergens", allergen_names(item.allergens));
    }
    return table;
}

inline Remarks terms(ClientQuote const& quote, Sender const& shop, Figures const& figures,
                     Words const& words) {
    Remarks terms = remarks_of<sheet_shapes::client_quote::terms>(words("terms"), {});
    if (quote.valid_until)
        terms.lines.push_back(
            quote.is_validity_cut
                ? words("prices hold until wanted", {{"date", figures.date(*quote.valid_until)}})
                : words("prices hold until", {{"date", figures.date(*quote.valid_until)}}));
    terms.lines.insert(terms.lines.end(), shop.terms.begin(), shop.terms.end());
    return terms;
}

GROAT_INLINE bool has_cold(ClientQuote const& quote) {
    return std::any_of(quote.items.begin(), quote.items.end(),
                       [](ClientQuote::Item const& item) { return is_kept_cold(item.keeping); });
}

inline Remarks cautions(ClientQuote const& quote, Words const& words) {
    Remarks cautions = remarks_of<sheet_shapes::shared::cautions>(words("please note"),
                                                                  {words("allergen caution")});
    if (has_cold(quote)) cautions.lines.push_back(words("cold caution"));
    bool const has_tax = !quote.totals.tax.is_zero();
    cautions.lines.push_back(has_tax ? words("tax caution") : words("no tax caution"));
    return cautions;
}

} // namespace client_quote_sheet_detail

GROAT_INLINE Sheet client_quote_sheet(ClientQuote const& quote, Sender const& shop) {
    namespace paper = client_quote_sheet_detail;
    Words const& words = shop.sheets.words;
    Figures const figures = Figures::in_words(shop);
    Sheet sheet = sheet_in_words(shop, "quote", "client", words("quote", {{"order", quote.id}}));
    FactsOf<sheet_shapes::client_quote::order> facts;
    quote_sheet_detail::add_order(facts, quote, shop, words);
    sheet.sections.emplace_back(std::move(facts));
    sheet.sections.emplace_back(paper::lines(quote, shop, figures, words));
    paper::add_tiers(sheet, quote, figures, words);
    sheet.sections.emplace_back(paper::contains(quote, words));
    if (!quote.notes.empty())
        sheet.sections.emplace_back(
            remarks_of<sheet_shapes::client_quote::notes>(words("notes"), {quote.notes}));
    sheet.sections.emplace_back(paper::terms(quote, shop, figures, words));
    sheet.sections.emplace_back(paper::cautions(quote, words));
    return sheet;
}

} // namespace groat
