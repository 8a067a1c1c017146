/// The quote for whoever orders: items, counts, unit prices, totals, tax, deposit, validity, allergens, keeping and
/// cautions. It is made of what a client is told, so that no cost, margin, supplier or loss can slip into it.
#pragma once

#include <groat/paper/sheet_shape.hpp>
#include <groat/price/client_quote.hpp>
#include <groat/sheets/figures.hpp>

#include <string>

namespace groat {

/// In the words of the shop.
[[nodiscard]] Sheet client_quote_sheet(ClientQuote const& quote, Sender const& shop);

namespace quote_sheet_detail {

/// What is said of the order itself on both sheets.
template <SectionShape const& shape>
void add_order(FactsOf<shape>& facts, ClientQuote const& quote, Sender const& shop,
               Words const& words) {
    if (!quote.client.empty()) facts.add("client", words("for"), quote.client);
    facts.add("date", words("date"), Figures::day(quote.date));
    if (quote.due) facts.add("due", words("wanted for"), Figures::day(*quote.due));
    if (quote.valid_until)
        facts.add("valid_until", words("valid until"), Figures::day(*quote.valid_until));
    facts.add("currency", words("currency"), std::string(shop.currency.code()));
}

/// What is sold on a row, for programs. What is no item has neither.
template <SectionShape const& shape> void tell_line(Row& row, ClientQuote::Line const& line) {
    auto const or_null = [](std::string const& name) { return name.empty() ? Cell() : Cell(name); };
    tell<shape>(row, "formula", or_null(line.formula));
    tell<shape>(row, "sold_as", or_null(line.sold_as));
}

} // namespace quote_sheet_detail

namespace client_quote_sheet_detail {

bool has_cold(ClientQuote const& quote);

} // namespace client_quote_sheet_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/client_quote_sheet.ipp>
#endif
