/// The one place that turns exact figures into what a reader sees: how many digits mean something, and
/// columns that add up.
#pragma once

#include <groat/base/apportion.hpp>
#include <groat/measure/coins.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/paper/sheet.hpp>

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace groat {

/// With its first letter as at the start of a sentence, where that is plain.
[[nodiscard]] inline std::string in_sentence(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

class Figures {
public:
    explicit Figures(Currency currency) : currency_(currency) {}

    /// Money with `more` digits beyond the minor unit.
    [[nodiscard]] Cell money(Money const& money, unsigned more = 0) const {
        return Figure{decimal(money.amount(), currency_.minor_digits() + more), money.amount(),
                      std::string(currency_.code())};
    }
    [[nodiscard]] Cell coins(Coins const& coins) const { return money(coins.money()); }

    /// A column of money whose printed figures add up to the printed sum, which is the last one returned.
    [[nodiscard]] std::vector<Cell> column(std::span<Money const> amounts, unsigned more = 0) const;

    [[nodiscard]] static Cell percent(Number const& share, unsigned places = 1) {
        return Figure{decimal(share * 100, places), share, "%"};
    }
    [[nodiscard]] static Cell percent(std::optional<Number> const& share) {
        return share ? percent(*share) : Cell();
    }
    [[nodiscard]] static Cell count(Number const& number, unsigned places = 2) {
        return Figure{decimal_at_most(number, places), number, "each"};
    }
    [[nodiscard]] static Cell grams(Number const& grams) {
        return Figure{mass_text(grams), grams, "g"};
    }
    [[nodiscard]] static Cell minutes(Number const& minutes) {
        return Figure{decimal(minutes, 1), minutes, "min"};
    }

    [[nodiscard]] unsigned digits() const { return currency_.minor_digits(); }
    [[nodiscard]] Cell shown(Number const& rounded, Number const& exact_figure,
                             unsigned more) const {
        return Figure{decimal(rounded, digits() + more), exact_figure,
                      std::string(currency_.code())};
    }

private:
    Currency currency_;
};

// ---------------------------------------------------------------------------------------------------

inline std::vector<Cell> Figures::column(std::span<Money const> amounts, unsigned more) const {
    std::vector<Number> exact_figures;
    Number sum;
    for (Money const& amount : amounts) {
        exact_figures.push_back(amount.amount());
        sum += amount.amount();
    }
    Number const step = decimal_step(digits() + more);
    std::vector<Number> const rounded = round_together(exact_figures, step);
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < amounts.size(); ++i)
        cells.push_back(shown(rounded[i], exact_figures[i], more));
    cells.push_back(shown(round_to(sum, step, Tie::half_even), sum, more));
    return cells;
}

} // namespace groat
