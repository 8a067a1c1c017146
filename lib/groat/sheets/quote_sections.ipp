#pragma once

#include <groat/sheets/quote_sections.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/cost/delivery_cost.hpp>
#include <groat/sheets/payable_rows.hpp>
#include <groat/sheets/shape_quote.hpp>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace groat {

namespace quote_sheet_detail {

/// The lines of an order as they were written, those of no item among the others: `line` and `extra` make the
/// cells of one, by its place among its like.
template <class OfLine, class OfExtra>
std::vector<Row> order_rows(Quote const& quote, OfLine line, OfExtra extra) {
    std::vector<Row> rows(quote.lines.size() + quote.extras.size());
    auto const set = [&](std::size_t number, std::vector<Cell> cells) {
        rows[number - 1] = {fmt::format("{}", number), std::move(cells)};
    };
    for (std::size_t i = 0; i < quote.lines.size(); ++i)
        set(number_of_line(*quote.order, i), line(quote.lines[i]));
    for (std::size_t i = 0; i < quote.extras.size(); ++i)
        set(number_of_extra(*quote.order, i), extra(quote.extras[i]));
    return rows;
}

GROAT_INLINE Table maker_lines(Quote const& quote, Book const& book, Figures const& figures) {
    Table table =
        table_of<sheet_shapes::maker_quote::lines>("Prices", {{"item"},
                                                              {"count", "Count"},
                                                              {"cost", "Cost each"},
                                                              {"price", "Price each"},
                                                              {"amount", "Amount"},
                                                              {"margin", "Margin"},
                                                              {"food_cost", "Food cost"}});
    auto const cells = [&](auto const& line, std::string title, Number const& count) {
        return std::vector<Cell>{in_sentence(std::move(title)),
                                 Figures::count(count),
                                 figures.money(line.burden.cost),
                                 figures.coins(line.price),
                                 figures.coins(line.amount),
                                 Figures::percent(line.earned.margin),
                                 Figures::percent(line.earned.food_cost)};
    };
    table.rows = order_rows(
        quote, [&](QuoteLine const& line) { return cells(line, line.title(book), line.count); },
        [&](QuoteExtra const& extra) {
            return cells(extra, extra.line->text, Number(extra.line->count));
        });
    return table;
}

GROAT_INLINE Table discount_table(Quote const& quote, Book const& book) {
    Table table = table_of<sheet_shapes::maker_quote::after_discount>(
        "What the discount leaves",
        {{"item"}, {"margin", "Margin before"}, {"after", "Margin after"}, {"mark"}});
    if (!quote.goods_after_discount) return table;
    auto const cells = [](std::string title, std::optional<Number> const& before,
                          std::optional<Number> const& after, bool loses, bool is_below_target) {
        std::vector<Cell> row{in_sentence(std::move(title)), Figures::percent(before),
                              Figures::percent(after), Cell()};
        if (is_below_target) row.back() = std::string("below target");
        if (loses) row.back() = std::string("below cost");
        return row;
    };
    auto const of_line = [&](auto const& line, std::string title) {
        AfterDiscount const& after = *line.after_discount;
        bool const is_sold = line.amount.minor_units().sign() >= 0; // it does not come back
        return cells(std::move(title), line.earned.margin, after.earned.margin,
                     is_sold && after.loses(), after.is_below_target);
    };
    table.rows = order_rows(
        quote, [&](QuoteLine const& line) { return of_line(line, line.title(book)); },
        [&](QuoteExtra const& extra) { return of_line(extra, extra.line->text); });
    GoodsEarned const& after = *quote.goods_after_discount;
    table.rows.push_back({"goods",
                          cells("All of these", quote.goods.margin, after.margin, after.loses(),
                                after.is_below_target),
                          Row::Kind::subtotal});
    return table;
}

GROAT_INLINE Table tax_table(QuoteTotals const& totals, Figures const& figures) {
    Table table = table_of<sheet_shapes::maker_quote::taxes>(
        "What is taxed", {{"rate", "Rate"}, {"taxable", "Without tax"}, {"tax", "Tax"}});
    if (totals.taxes.size() < 2 || !has_tax(totals)) return table;
    for (TaxClass const& each : totals.taxes)
        table.rows.push_back(
            {fmt::format("{}", table.rows.size() + 1),
             {Figure{decimal_at_most(each.rate.value() * 100, 3), each.rate.value(), "%"},
              figures.coins(each.net), figures.coins(each.tax)}});
    table.rows.push_back(
        {"total", {{}, figures.coins(totals.net), figures.coins(totals.tax)}, Row::Kind::total});
    return table;
}

GROAT_INLINE Table result(Quote const& quote, ShownCosts const& costs, Figures const& figures) {
    QuoteTotals const& totals = quote.totals;
    Table table =
        table_of<sheet_shapes::maker_quote::result>("What the order earns", {{"what"}, {"amount"}});
    Number const& revenue = totals.revenue.amount();
    std::array<Number, 2> const rest{totals.fee.amount(), totals.profit.amount()};
    std::vector<Number> const shown =
        round_to_total(rest, decimal_step(figures.digits()), revenue - costs.all.shown);
    auto const add = [&](std::string key, std::string words, Number const& rounded,
                         Number const& exact, Row::Kind kind = Row::Kind::line) {
        table.rows.push_back(
            {std::move(key), {std::move(words), figures.shown(rounded, exact, 0)}, kind});
    };
    add("revenue", "Revenue without tax", revenue, revenue);
    add("fee", "Payment fee" + (quote.paid_by ? ", " + *quote.paid_by : std::string()), -shown[0],
        -rest[0]);
    add("cost", "Cost", -costs.all.shown, -costs.all.exact);
    add("profit", "Profit", shown[1], rest[1], Row::Kind::total);
    if (totals.margin)
        table.rows.push_back({"margin", {std::string("Margin"), Figures::percent(*totals.margin)}});
    return table;
}

GROAT_INLINE Table order_costs(ShownCosts const& costs, Figures const& figures) {
    Table table = table_of<sheet_shapes::maker_quote::order_costs>(
        "What the order costs", {{"category"}, {"cost", "Cost"}, {"share", "Of cost"}});
    struct Part {
        std::string key;
        std::string words;
        ShownFigure cost;
    };
    std::vector<Part> parts;
    auto const add = [&](std::string key, std::string words, ShownFigure const& cost) {
        if (!cost.exact.is_zero()) parts.push_back({std::move(key), std::move(words), cost});
    };
    for (ShownCategory const& each : costs.categories)
        add(each.key(), in_sentence(each.key()), each.cost);
    add("delivery", "Delivery", costs.apart);
    add("other", "Lines of no item", costs.other);
    Number const& total = costs.all.exact;
    std::vector<Number> shares;
    for (Part const& part : parts)
        shares.push_back(total.is_zero() ? Number() : part.cost.exact / total);
    std::vector<Number> const shown = round_together(shares, decimal_step(3));
    for (std::size_t i = 0; i < parts.size(); ++i)
        table.rows.push_back(
            {parts[i].key,
             {parts[i].words, figures.shown(parts[i].cost.shown, parts[i].cost.exact, 0),
              Figure{decimal(shown[i] * 100, 1), shares[i], "%"}}});
    table.rows.push_back({"cost",
                          {std::string("Cost"), figures.shown(costs.all.shown, total, 0),
                           Figures::percent(total.is_zero() ? Number() : Number(1))},
                          Row::Kind::total});
    return table;
}

GROAT_INLINE Table delivery_table(Quote const& quote, Shop const& shop, ShownCosts const& costs,
                                  Figures const& figures) {
    Table table =
        table_of<sheet_shapes::maker_quote::delivery>("Delivery", {{"what"}, {"cost", "Cost"}});
    if (!quote.order->delivery) return table;
    Delivery const& drive = *quote.order->delivery;
    DeliveryCost const cost = delivery_cost(shop, drive);
    std::array<Money, 3> const parts{cost.flat, cost.way, cost.time};
    bool const is_apart = drive.charge != DeliveryCharge::in_price;
    std::vector<Cell> const column =
        figures.column(parts, is_apart ? costs.apart : costs.of(Category::delivery));
    table.rows.push_back({"flat", {std::string("For the trip"), column[0]}});
    if (!cost.distance.amount.is_zero()) {
        Number const unit = cost.distance.unit == nullptr ? Number(1) : cost.distance.unit->factor;
        std::string const name =
            cost.distance.unit == nullptr ? "m" : std::string(cost.distance.unit->name);
        table.rows.push_back(
            {"way",
             {fmt::format("{} {} as driven, {}", figures.number(cost.distance.amount / unit, 2),
                          name, drive.is_both_ways ? "both ways" : "one way"),
              column[1]}});
    }
    if (!drive.minutes.is_zero())
        table.rows.push_back(
            {"time",
             {fmt::format("{} minutes of {}", figures.number(drive.minutes, 1), shop.driver.name),
              column[2]}});
    table.rows.push_back({"total", {std::string("The drive"), column[3]}, Row::Kind::total});
    return table;
}

} // namespace quote_sheet_detail

} // namespace groat
