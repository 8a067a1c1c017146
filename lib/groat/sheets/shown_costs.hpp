/// The costs of an order as they are printed: the whole is rounded first and divided downwards, so that a figure
/// is the same number wherever it stands on a sheet, and every column adds up.
///
///     the whole  ->  all items, delivery charged apart, lines of no item
///     all items  ->  each category, supplies as one   ->  consumables, packaging
///     all items  ->  each line
#pragma once

#include <groat/cost/breakdown.hpp>
#include <groat/sheets/figures.hpp>

#include <string>
#include <vector>

namespace groat {

/// What a category costs, as it is printed.
struct ShownCategory {
    Category category = Category::ingredients;
    ShownFigure cost;

    [[nodiscard]] std::string key() const { return std::string(word_of(category)); }
};

/// Of a cost over `divisor` the categories that cost anything, in their order and in whole steps, which add up to `total`.
/// Consumables and packaging are divided as one, since the table of supplies has their sum. Whoever prints a cost by
/// category has it from here.
[[nodiscard]] std::vector<ShownCategory> shown_categories(CostByCategory const& cost,
                                                          Number const& divisor, Number const& step,
                                                          Number const& total);

struct ShownCosts {
    ShownFigure all;
    ShownFigure items;
    ShownFigure apart; ///< delivery on a line of its own
    ShownFigure other; ///< lines of no item
    std::vector<ShownCategory> categories;
    std::vector<ShownFigure> lines;

    /// Nothing for what costs nothing.
    [[nodiscard]] ShownFigure of(Category category) const;
    /// Packaging and consumables.
    [[nodiscard]] ShownFigure supplies() const;
};

/// In whole steps of `step`; `other` is what lines of no item cost.
[[nodiscard]] ShownCosts shown_costs(OrderCost const& cost, Money const& other, Number const& step);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/shown_costs.ipp>
#endif
