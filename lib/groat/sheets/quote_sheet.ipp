#pragma once

#include <groat/sheets/quote_sheet.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/buy_sections.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/cost_sections.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/payable_rows.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/quote_sections.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/tier_sections.hpp>
#include <groat/sheets/ways_table.hpp>

#include <string>

namespace groat {

namespace quote_sheet_detail {

/// For each line its figures, then where its price goes. Both are of the key that the line has in `lines`.
inline void add_line(Sheet& sheet, Quote const& quote, std::size_t index, ShownCosts const& costs,
                     Book const& book, Figures const& figures) {
    QuoteLine const& line = quote.lines[index];
    std::string const of = fmt::format("{}", number_of_line(*quote.order, index));
    FactsOf<sheet_shapes::maker_quote::line_prices> facts(
        fmt::format("{}. {}, {} of them", of, in_sentence(line.title(book)),
                    figures.number(line.count, 2)),
        of);
    add_price_facts(facts, line, book.shop);
    facts.add("amount", "Amount of the line", figures.coins(line.amount));
    if (book.shop.tax.is_contained && line.revenue)
        facts.add("revenue", "Less its tax as printed", figures.coins(*line.revenue));
    facts.add("fixed_fee", "Share of the fixed fee", figures.money(line.fixed_fee(), 2));
    sheet.sections.emplace_back(std::move(facts));
    Table makeup = price_makeup<sheet_shapes::maker_quote::line_costs>(
        line, book.shop, "The line", true, costs.lines[index].shown);
    makeup.title.clear();
    makeup.of = of;
    sheet.sections.emplace_back(std::move(makeup));
}

} // namespace quote_sheet_detail

GROAT_INLINE Sheet maker_quote_sheet(Quote const& quote, Costing const& costing,
                                     std::optional<CostedAndPaid> const& way) {
    Book const& book = costing.book();
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "quote", "maker", "Worksheet for order " + quote.order->id);
    FactsOf<sheet_shapes::maker_quote::order> facts;
    facts.add("id", Words::english()("order"), quote.order->id);
    ClientQuote const told = quote_for_client(quote, book);
    quote_sheet_detail::add_order(facts, told, book.shop, Words::english());
    facts.add("prices_on", "Prices of", Figures::day(quote.date));
    if (quote.is_validity_cut)
        facts.add("validity", "Validity",
                  std::string("ends on the day it is wanted, which it would outlast"));
    sheet.sections.emplace_back(std::move(facts));

    ShownCosts const costs =
        shown_costs(quote.cost, quote.cost_of_extras(), decimal_step(figures.digits()));
    Table lines = quote_sheet_detail::maker_lines(quote, book, figures);
    for (std::size_t i = 0; i < lines.rows.size(); ++i)
        quote_sheet_detail::tell_line<sheet_shapes::maker_quote::lines>(lines.rows[i],
                                                                        told.lines[i]);
    sheet.sections.emplace_back(std::move(lines));
    Table totals =
        table_of<sheet_shapes::maker_quote::totals>("What the client pays", {{"what"}, {"amount"}});
    totals.rows = quote_sheet_detail::total_rows(told.totals, told.deposit, book.shop, figures,
                                                 Words::english(), 2);
    sheet.sections.emplace_back(std::move(totals));
    if (Table left = quote_sheet_detail::discount_table(quote, book); !left.rows.empty())
        sheet.sections.emplace_back(std::move(left));
    if (Table taxes = quote_sheet_detail::tax_table(quote.totals, figures); !taxes.rows.empty())
        sheet.sections.emplace_back(std::move(taxes));
    sheet.sections.emplace_back(quote_sheet_detail::result(quote, costs, figures));
    sheet.sections.emplace_back(quote_sheet_detail::order_costs(costs, figures));
    if (way) {
        Table packs = buy_sheet_detail::costed(*way, figures);
        packs.remark = fmt::format("Packs for this order alone, at the least outlay and the prices "
                                   "of this day; 'groat buy {}' lists them.",
                                   printable(quote.order->id));
        sheet.sections.emplace_back(std::move(packs));
    }
    if (Table drive = quote_sheet_detail::delivery_table(quote, book.shop, costs, figures);
        !drive.rows.empty())
        sheet.sections.emplace_back(std::move(drive));
    sheet.sections.emplace_back(ways_table(quote, book, figures));
    for (std::size_t i = 0; i < quote.lines.size(); ++i)
        quote_sheet_detail::add_line(sheet, quote, i, costs, book, figures);
    sheet.sections.emplace_back(
        yield_loss_table(quote.cost.loss, figures, costs.of(Category::ingredients)));
    add_maker_tiers(sheet, quote, book, figures);
    add_cost_tables(sheet, quote.cost, costs, costing, figures);
    sheet.sections.emplace_back(maker_cautions(client_quote_sheet_detail::has_cold(told)));
    return sheet;
}

} // namespace groat
