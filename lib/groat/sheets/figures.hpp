/// The one place that turns exact figures into what a reader sees: how many digits mean something, and
/// columns that add up.
#pragma once

#include <groat/measure/coins.hpp>
#include <groat/measure/costed_unit.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/model/sender.hpp>
#include <groat/paper/sheet.hpp>

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace groat {

/// With its first letter as at the start of a sentence, where that is plain.
[[nodiscard]] std::string in_sentence(std::string text);

/// A figure that is printed in several places, always as the same number.
struct ShownFigure {
    Number exact;
    Number shown;
};

/// Figures for cells, which stay plain and are styled when they are drawn, and figures inside words, which are in
/// the style of the shop already.
class Figures {
public:
    explicit Figures(Currency currency, Style style = {})
        : currency_(currency), style_(std::move(style)) {}
    /// For sheets that stay in the house.
    explicit Figures(Sender const& shop) : Figures(shop.currency, shop.sheets.style) {}
    /// For sheets in the shop's words.
    [[nodiscard]] static Figures in_words(Sender const& shop) {
        return Figures(shop.currency, shop.sheets.style_in_words());
    }

    /// Money with `more` digits beyond the minor unit.
    [[nodiscard]] Cell money(Money const& money, unsigned more = 0) const {
        return Figure{decimal(money.amount(), currency_.minor_digits() + more), money.amount(),
                      std::string(currency_.code())};
    }
    [[nodiscard]] Cell coins(Coins const& coins) const { return money(coins.money()); }

    /// A column of money whose printed figures add up to the printed sum, which is the last one returned.
    [[nodiscard]] std::vector<Cell> column(std::span<Money const> amounts, unsigned more = 0) const;
    /// The same for a sum that stands elsewhere on the sheet as `total`, where it is that sum.
    [[nodiscard]] std::vector<Cell> column(std::span<Money const> amounts,
                                           std::optional<ShownFigure> const& total) const;

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
    /// Of something bought, by what it is costed by.
    [[nodiscard]] static Cell amount_of(Number const& amount, Dimension dimension) {
        if (dimension == Dimension::count) return count(amount);
        return Figure{amount_text(amount, dimension), amount,
                      dimension == Dimension::volume ? "mL" : "g"};
    }
    [[nodiscard]] static Cell minutes(Number const& minutes) {
        return Figure{decimal(minutes, 1), minutes, "min"};
    }
    [[nodiscard]] static Cell day(Date date) { return Day{date}; }
    /// For a column of days.
    [[nodiscard]] static Cell short_day(Date date) { return Day{date, true}; }

    // Inside words ------------------------------------------------------------------------------------

    /// With at most `places` digits behind the point.
    [[nodiscard]] std::string number(Number const& number, unsigned places = 0,
                                     Tie tie = Tie::half_even) const {
        return style_.number(decimal_at_most(number, places, tie));
    }
    /// With exactly `places` of them.
    [[nodiscard]] std::string fixed(Number const& number, unsigned places,
                                    Tie tie = Tie::half_even) const {
        return style_.number(decimal(number, places, tie));
    }
    /// "30 %", with at most `places` digits behind the point.
    [[nodiscard]] std::string share(Number const& share, unsigned places = 2) const {
        return number(share * 100, places) + " %";
    }
    /// "400 g", "1.2 kg"
    [[nodiscard]] std::string mass(Number const& grams) const {
        return style_.numbers_in(mass_text(grams));
    }
    /// Of something bought: "400 g", "59 mL", "12".
    [[nodiscard]] std::string words_of(Number const& amount, Dimension dimension) const {
        return style_.numbers_in(amount_text(amount, dimension));
    }
    /// An amount with its sign, if the shop has one.
    [[nodiscard]] std::string amount(Money const& money, unsigned more = 0,
                                     Tie tie = Tie::half_even) const {
        return style_.money(decimal(money.amount(), digits() + more, tie));
    }
    /// An amount with its sign, else with the code of the currency.
    [[nodiscard]] std::string full_amount(Money const& money, unsigned more = 0) const {
        return amount(money, more) +
               (style_.has_sign() ? std::string() : ' ' + std::string(currency_.code()));
    }
    [[nodiscard]] std::string date(Date date) const { return style_.date(date); }
    [[nodiscard]] std::string short_date(Date date) const { return style_.short_date(date); }
    [[nodiscard]] Style const& style() const { return style_; }

    [[nodiscard]] unsigned digits() const { return currency_.minor_digits(); }
    [[nodiscard]] Cell shown(Number const& rounded, Number const& exact_figure,
                             unsigned more) const {
        return Figure{decimal(rounded, digits() + more), exact_figure,
                      std::string(currency_.code())};
    }

private:
    [[nodiscard]] std::vector<Cell> column(std::span<Number const> exact_figures,
                                           ShownFigure const& total, unsigned more) const;
    Currency currency_;
    Style style_;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/figures.ipp>
#endif
