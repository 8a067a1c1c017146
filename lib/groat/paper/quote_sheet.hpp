/// The quote as a sheet: for the client what is sold, for how much and on what terms; for the maker every
/// figure behind it. The client's sheet is built without ever touching cost, so none can slip into it.
#pragma once

#include <groat/paper/break_charts.hpp>
#include <groat/paper/cautions.hpp>
#include <groat/paper/cost_sections.hpp>
#include <groat/paper/letterhead.hpp>
#include <groat/paper/price_makeup.hpp>
#include <groat/trade/contents.hpp>
#include <groat/trade/quote.hpp>

#include <set>
#include <string>
#include <vector>

namespace groat {

/// For whoever orders: items, counts, unit prices, totals, tax, deposit, validity, allergens, keeping and
/// cautions. No cost, margin, supplier or loss.
[[nodiscard]] Sheet client_quote_sheet(Quote const& quote, Book const& book);

/// For whoever makes it: costs by category per piece, sale unit and order, losses, what each price earns,
/// and what everything was reckoned from.
[[nodiscard]] Sheet maker_quote_sheet(Quote const& quote, Costing const& costing);

// ---------------------------------------------------------------------------------------------------

namespace quote_paper {

/// What is said of the order itself on both sheets.
inline Facts head(Quote const& quote, Shop const& shop, Words const& words) {
    Facts facts{"order", "", {}};
    auto const add = [&](std::string key, std::string label, Cell value) {
        facts.facts.push_back({std::move(key), std::move(label), std::move(value)});
    };
    add("id", words("order"), quote.order->id);
    if (!quote.order->client.empty()) add("client", words("for"), quote.order->client);
    add("date", words("date"), Figures::day(quote.order->date.value_or(quote.date)));
    if (quote.order->due) add("due", words("wanted for"), Figures::day(*quote.order->due));
    if (quote.valid_until)
        add("valid_until", words("valid until"), Figures::day(*quote.valid_until));
    add("currency", words("currency"), std::string(shop.currency.code()));
    return facts;
}

inline std::string tax_label(TaxRule const& rule, TaxRate const& rate, Figures const& figures,
                             Words const& words) {
    std::string const tax = rule.name == TaxRule().name ? words("tax") : rule.name;
    std::string const share = figures.share(rate.value(), 3);
    return rule.is_contained ? words("tax contained", {{"tax", tax}, {"rate", share}})
                             : words("tax added", {{"tax", tax}, {"rate", share}});
}

/// From the subtotal to the balance: the rows below the lines of a quote, `cells` columns wide.
inline std::vector<Row> total_rows(Quote const& quote, Shop const& shop, Figures const& figures,
                                   Words const& words, std::size_t cells) {
    QuoteTotals const& totals = quote.totals;
    std::vector<Row> rows;
    auto const add = [&](std::string key, std::string label, Coins const& amount, Row::Kind kind) {
        std::vector<Cell> row(cells);
        row.front() = std::move(label);
        row.back() = figures.coins(amount);
        rows.push_back({std::move(key), std::move(row), kind});
    };
    using Kind = Row::Kind;
    bool const plain = totals.to_minimum.is_zero() && totals.rush.is_zero() &&
                       totals.discount.is_zero() && totals.delivery.is_zero();
    bool const has_tax =
        std::any_of(totals.taxes.begin(), totals.taxes.end(),
                    [](TaxClass const& each) { return each.rate.value().is_positive(); });
    if (!plain || (has_tax && !shop.tax.is_contained))
        add("subtotal", words("subtotal"), totals.subtotal, Kind::total);
    if (!totals.to_minimum.is_zero())
        add("minimum", words("to the minimum order"), totals.to_minimum, Kind::subtotal);
    if (!totals.rush.is_zero()) add("rush", words("rush surcharge"), totals.rush, Kind::subtotal);
    if (!totals.discount.is_zero())
        add("discount", words("discount"), -totals.discount, Kind::subtotal);
    if (!totals.delivery.is_zero())
        add("delivery", words("delivery"), totals.delivery, Kind::subtotal);
    auto const add_taxes = [&] {
        for (std::size_t i = 0; i < totals.taxes.size(); ++i)
            if (totals.taxes[i].rate.value().is_positive())
                add("tax", in_sentence(tax_label(shop.tax, totals.taxes[i].rate, figures, words)),
                    totals.taxes[i].tax, Kind::subtotal);
    };
    if (!shop.tax.is_contained) add_taxes();
    add("total", words("total"), totals.total, Kind::total);
    if (shop.tax.is_contained) add_taxes();
    if (!totals.deposit.is_zero()) {
        Number const share = quote.order->deposit.value_or(shop.deposit).value();
        add("deposit", words("deposit", {{"share", figures.share(share)}}), totals.deposit,
            Kind::subtotal);
        add("balance", words("balance"), totals.balance, Kind::subtotal);
    }
    if (totals.cash && !(*totals.cash == totals.total))
        add("cash", words("total in cash"), *totals.cash, Kind::subtotal);
    return rows;
}

/// The formulas sold, each once, in the order of the lines.
inline std::vector<std::size_t> items_of(Quote const& quote) {
    std::vector<std::size_t> items;
    for (QuoteLine const& line : quote.lines)
        if (std::find(items.begin(), items.end(), line.formula) == items.end())
            items.push_back(line.formula);
    return items;
}

inline Table break_table(Quote const& quote, Book const& book, Figures const& figures,
                         Words const& words) {
    Table table{"quantity_breaks", words("price by quantity"), {{"item", "", true}}, {}, {}};
    for (Integer const& count : quote.order->quantity_breaks)
        table.columns.push_back({"price_" + count.str(),
                                 words("for a count", {{"count", figures.number(Number(count))}}),
                                 false});
    for (std::size_t i = 0; i < quote.lines.size(); ++i) {
        std::vector<Cell> row{in_sentence(quote.lines[i].title(book))};
        for (BreakPrice const& entry : quote.breaks)
            if (entry.line == i) row.push_back(figures.coins(entry.price));
        table.rows.push_back({fmt::format("{}", i + 1), std::move(row)});
    }
    if (quote.lines.size() > 1) table.remark = words("price by quantity holds");
    return table;
}

inline bool has_cold(Quote const& quote, Book const& book) {
    auto const items = items_of(quote);
    return std::any_of(items.begin(), items.end(), [&](std::size_t item) {
        return is_kept_cold(contents_of(book, item).keeping);
    });
}

/// For each line its figures, then where its price goes. Both are of the key that the line has in `lines`.
inline void add_line(Sheet& sheet, QuoteLine const& line, std::size_t number, Book const& book,
                     Figures const& figures) {
    std::string const of = fmt::format("{}", number);
    Facts facts{"line_prices",
                fmt::format("{}. {}, {} of them", number, in_sentence(line.title(book)),
                            figures.number(line.count, 2)),
                price_facts(line, book.shop), of};
    facts.facts.push_back({"amount", "Amount of the line", figures.coins(line.amount)});
    facts.facts.push_back({"fixed_fee", "Share of the fixed fee",
                           figures.money(line.burden.fee.fixed * line.count, 2)});
    sheet.sections.emplace_back(std::move(facts));
    Table makeup = price_makeup(line, book.shop, "line_costs", "The line");
    makeup.title.clear();
    makeup.of = of;
    sheet.sections.emplace_back(std::move(makeup));
}

inline Table result(Quote const& quote, Figures const& figures) {
    QuoteTotals const& totals = quote.totals;
    Table table{"result", "What the order earns", {{"what", "", true}, {"amount", ""}}, {}, {}};
    std::array<Money, 3> const parts{totals.revenue, -totals.fee, -totals.cost};
    std::vector<Cell> const column = figures.column(parts);
    table.rows.push_back({"revenue", {std::string("Revenue without tax"), column[0]}});
    table.rows.push_back(
        {"fee",
         {"Payment fee" + (quote.paid_by ? ", " + *quote.paid_by : std::string()), column[1]}});
    table.rows.push_back({"cost", {std::string("Cost"), column[2]}});
    table.rows.push_back({"profit", {std::string("Profit"), column[3]}, Row::Kind::total});
    if (totals.margin)
        table.rows.push_back({"margin", {std::string("Margin"), Figures::percent(*totals.margin)}});
    return table;
}

/// The whole order by category, each as a share of its cost.
inline Table order_costs(Quote const& quote, Figures const& figures) {
    Table table{"order_costs",
                "What the order costs",
                {{"category", "", true}, {"cost", "Cost"}, {"share", "Of cost"}},
                {},
                {}};
    CostByCategory all = quote.cost.total;
    all[Category::delivery] += quote.cost.delivery_apart;
    Money const total = all.total();
    std::vector<Number> shares;
    for (Money const& amount : all.amounts)
        shares.push_back(total.is_zero() ? Number() : amount / total);
    std::vector<Cell> const column = figures.column(all.amounts);
    std::vector<Number> const shown = round_together(shares, decimal_step(3));
    for (std::size_t i = 0; i < category_count; ++i) {
        if (all.amounts[i].is_zero()) continue;
        std::string const word(category_words[i]);
        table.rows.push_back(
            {word,
             {in_sentence(word), column[i], Figure{decimal(shown[i] * 100, 1), shares[i], "%"}}});
    }
    table.rows.push_back({"cost",
                          {std::string("Cost"), column.back(),
                           Figures::percent(total.is_zero() ? Number() : Number(1))},
                          Row::Kind::total});
    return table;
}

} // namespace quote_paper

inline Sheet client_quote_sheet(Quote const& quote, Book const& book) {
    using quote_paper::items_of;
    Words const& words = book.shop.sheets.words;
    Figures const figures = Figures::in_words(book.shop);
    Sheet sheet =
        sheet_in_words(book.shop, "quote", "client", words("quote", {{"order", quote.order->id}}));
    Facts facts = quote_paper::head(quote, book.shop, words);
    facts.facts.erase(facts.facts.begin()); // the number stands in the title
    sheet.sections.emplace_back(std::move(facts));

    Table lines{"lines",
                "",
                {{"item", "", true},
                 {"count", words("count")},
                 {"unit_price", words("price each")},
                 {"amount", words("amount")}},
                {},
                {}};
    for (std::size_t i = 0; i < quote.lines.size(); ++i) {
        QuoteLine const& line = quote.lines[i];
        lines.rows.push_back({fmt::format("{}", i + 1),
                              {in_sentence(line.title(book)), Figures::count(line.count),
                               figures.coins(line.price), figures.coins(line.amount)}});
    }
    for (Row& row : quote_paper::total_rows(quote, book.shop, figures, words, 4)) {
        lines.rows.push_back(std::move(row));
    }
    sheet.sections.emplace_back(std::move(lines));
    if (!quote.breaks.empty()) {
        sheet.sections.emplace_back(quote_paper::break_table(quote, book, figures, words));
        if (auto chart = client_break_chart(quote, book, figures, words))
            sheet.sections.emplace_back(std::move(*chart));
    }

    Table contains{
        "contains", words("what is in it"), {{"item", "", true}, {"words", "", true}}, {}, {}};
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
        sheet.sections.emplace_back(Remarks{"notes", words("notes"), {quote.order->notes}});
    Remarks terms{"terms", words("terms"), {}};
    if (quote.valid_until)
        terms.lines.push_back(
            words("prices hold until", {{"date", figures.date(*quote.valid_until)}}));
    terms.lines.insert(terms.lines.end(), book.shop.terms.begin(), book.shop.terms.end());
    sheet.sections.emplace_back(std::move(terms));

    Remarks cautions{"cautions", words("please note"), {words("allergen caution")}};
    if (quote_paper::has_cold(quote, book)) cautions.lines.push_back(words("cold caution"));
    bool const has_tax = !quote.totals.tax.is_zero();
    cautions.lines.push_back(has_tax ? words("tax caution") : words("no tax caution"));
    sheet.sections.emplace_back(std::move(cautions));
    return sheet;
}

inline Sheet maker_quote_sheet(Quote const& quote, Costing const& costing) {
    Book const& book = costing.book();
    Figures const figures(book.shop);
    Sheet sheet = sheet_for(book.shop, "quote", "maker", "Worksheet for order " + quote.order->id);
    Facts facts = quote_paper::head(quote, book.shop, Words::english());
    facts.facts.push_back({"prices_on", "Prices of", Figures::day(quote.date)});
    sheet.sections.emplace_back(std::move(facts));

    Table lines{"lines",
                "Prices",
                {{"item", "", true},
                 {"count", "Count"},
                 {"cost", "Cost each"},
                 {"price", "Price each"},
                 {"amount", "Amount"},
                 {"margin", "Margin"},
                 {"food_cost", "Food cost"}},
                {},
                {}};
    for (std::size_t i = 0; i < quote.lines.size(); ++i) {
        QuoteLine const& line = quote.lines[i];
        lines.rows.push_back({fmt::format("{}", i + 1),
                              {in_sentence(line.title(book)), Figures::count(line.count),
                               figures.money(line.burden.cost), figures.coins(line.price),
                               figures.coins(line.amount), Figures::percent(line.earned.margin),
                               Figures::percent(line.earned.food_cost)}});
    }
    sheet.sections.emplace_back(std::move(lines));
    Table totals{"totals",
                 "What the client pays",
                 {{"what", "", true}, {"amount", ""}},
                 quote_paper::total_rows(quote, book.shop, figures, Words::english(), 2),
                 {}};
    sheet.sections.emplace_back(std::move(totals));
    sheet.sections.emplace_back(quote_paper::result(quote, figures));
    sheet.sections.emplace_back(quote_paper::order_costs(quote, figures));
    for (std::size_t i = 0; i < quote.lines.size(); ++i)
        quote_paper::add_line(sheet, quote.lines[i], i + 1, book, figures);
    sheet.sections.emplace_back(yield_loss_table(quote.cost.loss, figures));
    if (!quote.breaks.empty()) {
        Table breaks{"breaks",
                     "Quantity breaks, the whole order costed anew",
                     {{"item", "", true},
                      {"count", "Count"},
                      {"cost", "Cost each"},
                      {"price", "Price each"}},
                     {},
                     {}};
        for (BreakPrice const& entry : quote.breaks)
            breaks.rows.push_back({fmt::format("{}", entry.line + 1),
                                   {in_sentence(quote.lines[entry.line].title(book)),
                                    Figures::count(Number(entry.count)), figures.money(entry.cost),
                                    figures.coins(entry.price)}});
        sheet.sections.emplace_back(std::move(breaks));
        for (Chart& chart : maker_break_charts(quote, book, figures))
            sheet.sections.emplace_back(std::move(chart));
    }
    add_cost_tables(sheet, quote.cost, costing, figures);
    sheet.sections.emplace_back(maker_cautions(quote_paper::has_cold(quote, book)));
    return sheet;
}

} // namespace groat
