/// The costs of an order as they are printed: the whole is rounded first and divided downwards, so that a figure
/// is the same number wherever it stands on a sheet, and every column adds up.
///
///     the whole  ->  all items, delivery charged apart, lines of no item
///     all items  ->  each category, supplies as one   ->  consumables, packaging
///     all items  ->  each line
#pragma once

#include <groat/cost/breakdown.hpp>
#include <groat/sheets/figures.hpp>

#include <array>
#include <vector>

namespace groat {

struct ShownCosts {
    ShownFigure all;
    ShownFigure items;
    ShownFigure apart; ///< delivery on a line of its own
    ShownFigure other; ///< lines of no item
    std::array<ShownFigure, category_count> categories;
    std::vector<ShownFigure> lines;

    [[nodiscard]] ShownFigure const& of(Category category) const {
        return categories[static_cast<std::size_t>(category)];
    }
    /// Packaging and consumables.
    [[nodiscard]] ShownFigure supplies() const {
        ShownFigure const& used = of(Category::consumables);
        ShownFigure const& packed = of(Category::packaging);
        return {used.exact + packed.exact, used.shown + packed.shown};
    }
};

/// In whole steps of `step`; `other` is what lines of no item cost.
[[nodiscard]] ShownCosts shown_costs(OrderCost const& cost, Money const& other, Number const& step);

/// Categories in whole steps that add up to `total`. What costs nothing stays nothing.
[[nodiscard]] std::array<Number, category_count> round_categories(
    std::array<Number, category_count> const& exact, Number const& step, Number const& total);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/shown_costs.ipp>
#endif
