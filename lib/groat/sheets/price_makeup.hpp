/// What one line's price is to reach, and where it goes.
#pragma once

#include <groat/paper/sheet_shape.hpp>
#include <groat/price/line_price.hpp>
#include <groat/sheets/shown_costs.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// Where the price of one line goes: each category of cost, the fee and the profit, for a piece, a sale
/// unit and the whole line, down to the net price. `whole_cost` is the cost of the line as it is printed
/// elsewhere, where it is.
template <SectionShape const& shape>
[[nodiscard]] Table price_makeup(QuoteLine const& line, Shop const& shop, std::string_view whole,
                                 bool has_bars = true,
                                 std::optional<Number> const& whole_cost = {});

/// The parts of a line's cost and price over `divisor`, exact and such that the printed ones add up.
struct PriceParts {
    std::vector<ShownCategory> categories; ///< those that cost anything
    ShownFigure cost;
    ShownFigure fee = {}; ///< this and all below only of what has a price
    ShownFigure profit = {};
    ShownFigure net = {};
};
/// In whole steps of `step`. Costs add up to the cost, cost, fee and profit to the net price. `cost` is the cost
/// as it is printed elsewhere, where it is.
[[nodiscard]] PriceParts price_parts(QuoteLine const& line, Number const& divisor,
                                     Number const& step, std::optional<Number> const& cost = {});

/// What a target is in words: "a margin of 40 %".
[[nodiscard]] std::string in_words(Target const& target, Figures const& figures);

/// What a priced line was to reach and what its price earns, as facts for the maker.
template <SectionShape const& shape>
void add_price_facts(FactsOf<shape>& facts, QuoteLine const& line, Shop const& shop);

template <SectionShape const& shape>
void add_price_facts(FactsOf<shape>& facts, QuoteLine const& line, Shop const& shop) {
    Figures const figures(shop);
    bool const is_contained = shop.tax.is_contained;
    facts.add("target", "Target", in_words(line.target, figures));
    if (line.wanted) facts.add("wanted", "Net price it takes", figures.money(*line.wanted, 2));
    facts.add("price", is_contained ? "Price with tax" : "Price", figures.coins(line.price));
    if (is_contained) facts.add("net_price", "Price without tax", figures.money(line.net_price, 2));
    facts.add("margin", "Margin", Figures::percent(line.earned.margin));
    facts.add("markup", "Markup on cost and fee", Figures::percent(line.earned.markup));
    facts.add("food_cost", "Food cost", Figures::percent(line.earned.food_cost));
    facts.add("prime_cost", "Prime cost", Figures::percent(line.earned.prime_cost));
    facts.add("contribution", "Contribution each", figures.money(line.earned.contribution));
}

template <SectionShape const& shape>
Table price_makeup(QuoteLine const& line, Shop const& shop, std::string_view whole, bool has_bars,
                   std::optional<Number> const& whole_cost) {
    Figures const figures(shop);
    Table table =
        table_of<shape>(line.has_price ? "Where the price goes" : "What it costs", {{"category"}});
    struct Basis {
        ColumnOf<shape> column;
        Number divisor;
        unsigned more;
    };
    bool const has_pieces = line.unit == nullptr || line.unit->holds.is(Dimension::count);
    std::vector<Basis> bases;
    if (has_pieces) bases.push_back({{"piece", "A piece"}, line.pieces, 2});
    if (line.unit != nullptr) bases.push_back({{"unit", "A " + line.unit->name}, line.count, 1});
    bases.push_back({{"all", std::string(whole)}, 1, 0});

    PriceParts const whole_line = price_parts(line, 1, decimal_step(figures.digits()));
    for (ShownCategory const& each : whole_line.categories)
        table.rows.push_back({each.key(), {in_sentence(each.key())}});
    std::size_t const below = whole_line.categories.size();
    table.rows.push_back({"cost", {std::string("Cost")}, Row::Kind::total});
    if (line.has_price) {
        table.rows.push_back({"fee", {std::string("Payment fee")}});
        table.rows.push_back({"profit", {std::string("Profit")}});
        table.rows.push_back({"net", {std::string("Price without tax")}, Row::Kind::total});
    }
    for (Basis const& basis : bases) {
        table.columns.push_back(basis.column);
        PriceParts const parts =
            price_parts(line, basis.divisor, decimal_step(figures.digits() + basis.more),
                        basis.more == 0 ? whole_cost : std::nullopt);
        auto const add = [&](std::size_t row, ShownFigure const& part) {
            table.rows[row].cells.push_back(figures.shown(part.shown, part.exact, basis.more));
        };
        for (std::size_t i = 0; i < below; ++i) add(i, parts.categories[i].cost);
        add(below, parts.cost);
        if (!line.has_price) continue;
        add(below + 1, parts.fee);
        add(below + 2, parts.profit);
        add(below + 3, parts.net);
    }
    if (!has_bars) return table;
    table.columns.push_back(bar_column());
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        if (table.rows[i].kind != Row::Kind::line) continue;
        table.rows[i].cells.push_back(
            i < below        ? figures.money(line.cost[whole_line.categories[i].category])
            : i == below + 1 ? figures.money(line.earned.fee * line.count)
                             : figures.money(line.earned.profit * line.count));
    }
    return table;
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/price_makeup.ipp>
#endif
