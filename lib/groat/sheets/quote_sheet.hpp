/// The quote as a sheet: for the client what is sold, for how much and on what terms; for the maker every
/// figure behind it. The client's sheet is built without ever touching cost, so none can slip into it.
#pragma once

#include <groat/price/contents.hpp>
#include <groat/price/quote.hpp>
#include <groat/sheets/buy_sections.hpp>
#include <groat/sheets/cautions.hpp>
#include <groat/sheets/cost_sections.hpp>
#include <groat/sheets/letterhead.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/quote_sections.hpp>
#include <groat/sheets/shape_quote.hpp>
#include <groat/sheets/shape_shared.hpp>
#include <groat/sheets/tier_sections.hpp>
#include <groat/sheets/ways_table.hpp>

#include <set>
#include <string>
#include <vector>

namespace groat {

/// For whoever orders: items, counts, unit prices, totals, tax, deposit, validity, allergens, keeping and
/// cautions. No cost, margin, supplier or loss.
[[nodiscard]] Sheet client_quote_sheet(Quote const& quote, Book const& book);

/// For whoever makes it: costs by category per piece, sale unit and order, losses, what each price earns,
/// and what everything was calculated from; with `way`, how what its goods were costed at becomes what their packs
/// cost.
[[nodiscard]] Sheet maker_quote_sheet(Quote const& quote, Costing const& costing,
                                      std::optional<CostedAndPaid> const& way = {});

// ---------------------------------------------------------------------------------------------------

namespace quote_paper {

/// What is said of the order itself on both sheets.
template <SectionShape const& shape>
void add_order(FactsOf<shape>& facts, Quote const& quote, Shop const& shop, Words const& words) {
    if (!quote.order->client.empty()) facts.add("client", words("for"), quote.order->client);
    facts.add("date", words("date"), Figures::day(quote.order->date.value_or(quote.date)));
    if (quote.order->due) facts.add("due", words("wanted for"), Figures::day(*quote.order->due));
    if (quote.valid_until)
        facts.add("valid_until", words("valid until"), Figures::day(*quote.valid_until));
    facts.add("currency", words("currency"), std::string(shop.currency.code()));
}

/// The formulas sold, each once, in the order of the lines.
inline std::vector<std::size_t> items_of(Quote const& quote) {
    std::vector<std::size_t> items;
    for (QuoteLine const& line : quote.lines)
        if (std::find(items.begin(), items.end(), line.formula) == items.end())
            items.push_back(line.formula);
    return items;
}

inline bool has_cold(Quote const& quote, Book const& book) {
    auto const items = items_of(quote);
    return std::any_of(items.begin(), items.end(), [&](std::size_t item) {
        return is_kept_cold(contents_of(book, item).keeping);
    });
}

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
    facts.add("fixed_fee", "Share of the fixed fee",
              figures.money(line.burden.fee.fixed * line.count, 2));
    sheet.sections.emplace_back(std::move(facts));
    Table makeup = price_makeup<sheet_shapes::maker_quote::line_costs>(
        line, book.shop, "The line", true, costs.lines[index].shown);
    makeup.title.clear();
    makeup.of = of;
    sheet.sections.emplace_back(std::move(makeup));
}

} // namespace quote_paper

inline Sheet client_quote_sheet(Quote const& quote, Book const& book) {
    using quote_paper::items_of;
    Words const& words = book.shop.sheets.words;
    Figures const figures = Figures::in_words(book.shop);
    Sheet sheet =
        sheet_in_words(book.shop, "quote", "client", words("quote", {{"order", quote.order->id}}));
    FactsOf<sheet_shapes::client_quote::order> facts;
    quote_paper::add_order(facts, quote, book.shop, words);
    sheet.sections.emplace_back(std::move(facts));

    Table lines =
        table_of<sheet_shapes::client_quote::lines>("", {{"item"},
                                                         {"count", words("count")},
                                                         {"unit_price", words("price each")},
                                                         {"amount", words("amount")}});
    auto const cells = [&](auto const& line, std::string title, Number const& count) {
        return std::vector<Cell>{in_sentence(std::move(title)), Figures::count(count),
                                 figures.coins(line.price), figures.coins(line.amount)};
    };
    lines.rows = quote_paper::order_rows(
        quote, [&](QuoteLine const& line) { return cells(line, line.title(book), line.count); },
        [&](QuoteExtra const& extra) {
            return cells(extra, extra.line->text, Number(extra.line->count));
        });
    for (Row& row : quote_paper::total_rows(quote, book.shop, figures, words, 4)) {
        lines.rows.push_back(std::move(row));
    }
    sheet.sections.emplace_back(std::move(lines));
    add_client_tiers(sheet, quote, book, figures, words);

    Table contains = table_of<sheet_shapes::client_quote::contains>(words("what is in it"),
                                                                    {{"item"}, {"words"}});
    for (std::size_t const item : items_of(quote)) {
        Contents const contents = contents_of(book, item);
        std::string const& name = book.formulas[item].name;
        std::string text = allergen_words(contents.allergens, words);
        if (std::string const keeping = keeping_words(contents.keeping, words); !keeping.empty())
            text += "; " + keeping;
        contains.rows.push_back({name, {in_sentence(name), in_sentence(text) + "."}});
    }
    sheet.sections.emplace_back(std::move(contains));

    if (!quote.order->notes.empty())
        sheet.sections.emplace_back(
            remarks_of<sheet_shapes::client_quote::notes>(words("notes"), {quote.order->notes}));
    Remarks terms = remarks_of<sheet_shapes::client_quote::terms>(words("terms"), {});
    if (quote.valid_until)
        terms.lines.push_back(
            quote.is_validity_cut
                ? words("prices hold until wanted", {{"date", figures.date(*quote.valid_until)}})
                : words("prices hold until", {{"date", figures.date(*quote.valid_until)}}));
    terms.lines.insert(terms.lines.end(), book.shop.terms.begin(), book.shop.terms.end());
    sheet.sections.emplace_back(std::move(terms));

    Remarks cautions = remarks_of<sheet_shapes::shared::cautions>(words("please note"),
                                                                  {words("allergen caution")});
    if (quote_paper::has_cold(quote, book)) cautions.lines.push_back(words("cold caution"));
    bool const has_tax = !quote.totals.tax.is_zero();
    cautions.lines.push_back(has_tax ? words("tax caution") : words("no tax caution"));
    sheet.sections.emplace_back(std::move(cautions));
    return sheet;
}

inline Sheet maker_quote_sheet(Quote const& quote, Costing const& costing,
                               std::optional<CostedAndPaid> const& way) {
    Book const& book = costing.book();
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "quote", "maker", "Worksheet for order " + quote.order->id);
    FactsOf<sheet_shapes::maker_quote::order> facts;
    facts.add("id", Words::english()("order"), quote.order->id);
    quote_paper::add_order(facts, quote, book.shop, Words::english());
    facts.add("prices_on", "Prices of", Figures::day(quote.date));
    if (quote.is_validity_cut)
        facts.add("validity", "Validity",
                  std::string("ends on the day it is wanted, which it would outlast"));
    sheet.sections.emplace_back(std::move(facts));

    Money other;
    for (QuoteExtra const& extra : quote.extras)
        other += extra.burden.cost * Number(extra.line->count);
    ShownCosts const costs = shown_costs(quote.cost, other, decimal_step(figures.digits()));
    sheet.sections.emplace_back(quote_paper::maker_lines(quote, book, figures));
    Table totals =
        table_of<sheet_shapes::maker_quote::totals>("What the client pays", {{"what"}, {"amount"}});
    totals.rows = quote_paper::total_rows(quote, book.shop, figures, Words::english(), 2);
    sheet.sections.emplace_back(std::move(totals));
    if (Table left = quote_paper::discount_table(quote, book); !left.rows.empty())
        sheet.sections.emplace_back(std::move(left));
    if (Table taxes = quote_paper::tax_table(quote.totals, figures); !taxes.rows.empty())
        sheet.sections.emplace_back(std::move(taxes));
    sheet.sections.emplace_back(quote_paper::result(quote, costs, figures));
    sheet.sections.emplace_back(quote_paper::order_costs(costs, figures));
    if (way) {
        Table packs = buy_paper::costed(*way, figures);
        packs.remark = fmt::format("Packs for this order alone, at the least outlay and the prices "
                                   "of this day; 'groat buy {}' lists them.",
                                   printable(quote.order->id));
        sheet.sections.emplace_back(std::move(packs));
    }
    if (Table drive = quote_paper::delivery_table(quote, book.shop, costs, figures);
        !drive.rows.empty())
        sheet.sections.emplace_back(std::move(drive));
    sheet.sections.emplace_back(ways_table(quote, book, figures));
    for (std::size_t i = 0; i < quote.lines.size(); ++i)
        quote_paper::add_line(sheet, quote, i, costs, book, figures);
    sheet.sections.emplace_back(
        yield_loss_table(quote.cost.loss, figures, costs.of(Category::ingredients)));
    add_maker_tiers(sheet, quote, book, figures);
    add_cost_tables(sheet, quote.cost, costs, costing, figures);
    sheet.sections.emplace_back(maker_cautions(quote_paper::has_cold(quote, book)));
    return sheet;
}

} // namespace groat
