#pragma once

#include <groat/sheets/figures.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/capital.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

namespace groat {

GROAT_INLINE std::string in_sentence(std::string text) {
    if (text.empty()) return text;
    Character const first = character_at(text, 0);
    if (first.is_valid && capital(first.code) != first.code)
        text.replace(0, first.length, utf8(capital(first.code)));
    return text;
}

GROAT_INLINE std::vector<Cell> Figures::column(std::span<Money const> amounts,
                                               unsigned more) const {
    std::vector<Number> exact_figures;
    Number sum;
    for (Money const& amount : amounts) {
        exact_figures.push_back(amount.amount());
        sum += amount.amount();
    }
    Number const step = decimal_step(digits() + more);
    return column(exact_figures, {sum, round_to(sum, step, Tie::half_even)}, more);
}

GROAT_INLINE std::vector<Cell> Figures::column(std::span<Money const> amounts,
                                               std::optional<ShownFigure> const& total) const {
    std::vector<Number> exact_figures;
    Number sum;
    for (Money const& amount : amounts) {
        exact_figures.push_back(amount.amount());
        sum += amount.amount();
    }
    if (!total || total->exact != sum) return column(amounts);
    return column(exact_figures, *total, 0);
}

GROAT_INLINE std::vector<Cell> Figures::column(std::span<Number const> exact_figures,
                                               ShownFigure const& total, unsigned more) const {
    std::vector<Number> const rounded =
        round_to_total(exact_figures, decimal_step(digits() + more), total.shown);
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < rounded.size(); ++i)
        cells.push_back(shown(rounded[i], exact_figures[i], more));
    cells.push_back(shown(total.shown, total.exact, more));
    return cells;
}

} // namespace groat
