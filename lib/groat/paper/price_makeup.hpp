/// What one line's price is to reach, and where it goes.
#pragma once

#include <groat/paper/figures.hpp>
#include <groat/trade/line_price.hpp>

#include <array>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace groat {

/// Where the price of one line goes: each category of cost, the fee and the profit, for a piece, a sale
/// unit and the whole line, down to the net price.
[[nodiscard]] Table price_makeup(QuoteLine const& line, Shop const& shop, std::string key,
                                 std::string_view whole);

/// What a target is in words: "a margin of 40 %".
[[nodiscard]] std::string in_words(Target const& target, Figures const& figures);

/// What a priced line was to reach and what its price earns, as facts for the maker.
[[nodiscard]] std::vector<Fact> price_facts(QuoteLine const& line, Shop const& shop);

// ---------------------------------------------------------------------------------------------------

inline std::vector<Fact> price_facts(QuoteLine const& line, Shop const& shop) {
    Figures const figures(shop);
    bool const is_contained = shop.tax.is_contained;
    std::vector<Fact> facts;
    auto const add = [&](std::string key, std::string label, Cell value) {
        if (!std::holds_alternative<std::monostate>(value))
            facts.push_back({std::move(key), std::move(label), std::move(value)});
    };
    add("target", "Target", in_words(line.target, figures));
    if (line.wanted) add("wanted", "Net price it takes", figures.money(*line.wanted, 2));
    add("price", is_contained ? "Price with tax" : "Price", figures.coins(line.price));
    if (is_contained) add("net_price", "Price without tax", figures.money(line.net_price, 2));
    add("margin", "Margin", Figures::percent(line.earned.margin));
    add("markup", "Markup on cost", Figures::percent(line.earned.markup));
    add("food_cost", "Food cost", Figures::percent(line.earned.food_cost));
    add("prime_cost", "Prime cost", Figures::percent(line.earned.prime_cost));
    add("contribution", "Contribution each", figures.money(line.earned.contribution));
    return facts;
}

inline std::string in_words(Target const& target, Figures const& figures) {
    auto const share = [&](Number const& value) { return figures.share(value); };
    auto const amount = [&](Money const& money) { return figures.amount(money); };
    if (auto const* margin = std::get_if<Margin>(&target))
        return "a margin of " + share(margin->value());
    if (auto const* markup = std::get_if<Markup>(&target))
        return "a markup of " + share(markup->value());
    if (auto const* food = std::get_if<FoodCostShare>(&target))
        return "a food cost of " + share(food->value());
    if (auto const* contribution = std::get_if<Contribution>(&target))
        return "a contribution of " + amount(contribution->amount) + " each";
    return "a given price of " + amount(std::get<GivenPrice>(target).amount);
}

inline Table price_makeup(QuoteLine const& line, Shop const& shop, std::string key,
                          std::string_view whole) {
    Figures const figures(shop);
    Table table{std::move(key),
                line.has_price ? "Where the price goes" : "What it costs",
                {{"category", "", true}},
                {},
                {}};
    struct Basis {
        Column column;
        Number divisor;
        unsigned more;
    };
    bool const has_pieces = line.unit == nullptr || line.unit->holds.is(Dimension::count);
    std::vector<Basis> bases;
    if (has_pieces) bases.push_back({{"piece", "A piece", false}, line.pieces, 2});
    if (line.unit != nullptr)
        bases.push_back({{"unit", "A " + line.unit->name, false}, line.count, 1});
    bases.push_back({{"all", std::string(whole), false}, 1, 0});

    std::vector<std::size_t> shown_categories; // those that cost anything
    for (std::size_t i = 0; i < category_count; ++i) {
        if (line.cost.amounts[i].is_zero()) continue;
        shown_categories.push_back(i);
        table.rows.push_back(
            {std::string(category_words[i]), {in_sentence(std::string(category_words[i]))}});
    }
    std::size_t const below = shown_categories.size();
    table.rows.push_back({"cost", {std::string("Cost")}, Row::Kind::total});
    if (line.has_price) {
        table.rows.push_back({"fee", {std::string("Payment fee")}});
        table.rows.push_back({"profit", {std::string("Profit")}});
        table.rows.push_back({"net", {std::string("Price without tax")}, Row::Kind::total});
    }
    for (Basis const& basis : bases) {
        table.columns.push_back(basis.column);
        Number const step = decimal_step(figures.digits() + basis.more);
        std::vector<Number> parts;
        for (std::size_t const i : shown_categories)
            parts.push_back(line.cost.amounts[i].amount() / basis.divisor);
        Number const cost = line.cost.total().amount() / basis.divisor;
        Number const cost_shown = round_to(cost, step, Tie::half_even);
        std::vector<Number> const shown = round_to_total(parts, step, cost_shown);
        for (std::size_t i = 0; i < below; ++i)
            table.rows[i].cells.push_back(figures.shown(shown[i], parts[i], basis.more));
        table.rows[below].cells.push_back(figures.shown(cost_shown, cost, basis.more));
        if (!line.has_price) continue;
        Number const units = line.count / basis.divisor;
        Number const net = line.net_price.amount() * units;
        Number const net_shown = round_to(net, step, Tie::half_even);
        std::array<Number, 2> const rest{line.earned.fee.amount() * units,
                                         line.earned.profit.amount() * units};
        std::vector<Number> const rest_shown = round_to_total(rest, step, net_shown - cost_shown);
        table.rows[below + 1].cells.push_back(figures.shown(rest_shown[0], rest[0], basis.more));
        table.rows[below + 2].cells.push_back(figures.shown(rest_shown[1], rest[1], basis.more));
        table.rows[below + 3].cells.push_back(figures.shown(net_shown, net, basis.more));
    }
    table.columns.push_back({"bar", "", false, true});
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        if (table.rows[i].kind != Row::Kind::line) continue;
        table.rows[i].cells.push_back(
            i < below        ? figures.money(line.cost.amounts[shown_categories[i]])
            : i == below + 1 ? figures.money(line.earned.fee * line.count)
                             : figures.money(line.earned.profit * line.count));
    }
    return table;
}

} // namespace groat
