#pragma once

#include <groat/sheets/named_makeup.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/price/named_costs.hpp>
#include <groat/sheets/price_makeup.hpp>
#include <groat/sheets/shape_cost.hpp>

#include <string>
#include <vector>

namespace groat {

namespace named_makeup_detail {

inline constexpr std::size_t most_rows = 12;
inline constexpr std::size_t fewest =
    5; ///< ingredients that stand by name however many rows there are

inline std::string key_of(NamedCost const& part, Book const& book) {
    switch (part.kind) {
    case NamedCost::Kind::ingredient: return book.ingredients[part.ingredient].name;
    case NamedCost::Kind::others: return "other ingredients";
    case NamedCost::Kind::lost: return "lost";
    }
    return {};
}

inline std::string words_of(NamedCost const& part, Book const& book) {
    switch (part.kind) {
    case NamedCost::Kind::ingredient: return in_sentence(book.ingredients[part.ingredient].name);
    case NamedCost::Kind::others: return fmt::format("{} other ingredients", part.count);
    case NamedCost::Kind::lost: return "Lost on the way (trim, bowl, oven)";
    }
    return {};
}

} // namespace named_makeup_detail

GROAT_INLINE Table named_makeup(ItemCost const& item, Book const& book) {
    QuoteLine const& line = item.line;
    Figures const figures(book.shop);
    bool const has_pieces = line.unit == nullptr || line.unit->holds.is(Dimension::count);
    Number const divisor = has_pieces ? line.pieces : line.count;
    std::string const one = has_pieces ? "piece" : line.unit->name;
    Number const whole =
        (line.has_price ? line.net_price * line.count : line.cost.total()).amount();

    unsigned const more = has_pieces ? 2 : 1; // as in `price_makeup`
    PriceParts const amounts = price_parts(line, divisor, decimal_step(figures.digits() + more));
    bool const has_shares = whole.is_positive();
    PriceParts const shares = price_parts(line, has_shares ? whole : Number(1), decimal_step(3));
    Table table = table_of<sheet_shapes::cost::by_name>(
        line.has_price ? "Where the price of one " + one + " goes" : "What one " + one + " costs",
        {{"part"}, {"amount", "A " + one}});
    if (has_shares)
        add_column<sheet_shapes::cost::by_name>(
            table, {"share", line.has_price ? "Of the price" : "Of the cost"});
    table.columns.push_back(bar_column());

    auto const add = [&](std::string key, std::string words, ShownFigure const& amount,
                         ShownFigure const& share, Row::Kind kind = Row::Kind::line) {
        Cell const figure = figures.shown(amount.shown, amount.exact, more);
        std::vector<Cell> cells{std::move(words), figure};
        if (has_shares) cells.emplace_back(Figure{decimal(share.shown * 100, 1), share.exact, "%"});
        if (kind == Row::Kind::line) cells.push_back(figure);
        table.rows.push_back({std::move(key), std::move(cells), kind});
    };
    for (std::size_t i = 0; i < amounts.categories.size(); ++i) {
        ShownCategory const& category = amounts.categories[i];
        ShownFigure const& of_whole = shares.categories[i].cost;
        if (category.category != Category::ingredients) {
            add(category.key(), in_sentence(category.key()), category.cost, of_whole);
            continue;
        }
        std::size_t const others = amounts.categories.size() - 1 + (line.has_price ? 2 : 0);
        std::vector<NamedCost> const parts = named_costs(
            item,
            others < named_makeup_detail::most_rows ? named_makeup_detail::most_rows - others : 0,
            named_makeup_detail::fewest);
        std::vector<Number> exactly;
        std::vector<Number> share;
        for (NamedCost const& part : parts) {
            exactly.push_back(part.cost.amount() / divisor);
            share.push_back(has_shares ? part.cost.amount() / whole : Number());
        }
        std::vector<Number> const shown =
            round_to_total(exactly, decimal_step(figures.digits() + more), category.cost.shown);
        std::vector<Number> const share_shown =
            has_shares ? round_to_total(share, decimal_step(3), of_whole.shown) : share;
        for (std::size_t k = 0; k < parts.size(); ++k)
            add(named_makeup_detail::key_of(parts[k], book),
                named_makeup_detail::words_of(parts[k], book), {exactly[k], shown[k]},
                {share[k], share_shown[k]});
    }
    add("cost", "Cost", amounts.cost, shares.cost, Row::Kind::total);
    if (!line.has_price) return table;
    add("fee", "Payment fee", amounts.fee, shares.fee);
    add("profit", "Profit", amounts.profit, shares.profit);
    add("net", "Price without tax", amounts.net, shares.net, Row::Kind::total);
    return table;
}

} // namespace groat
