/// How figures and dates are written for people: marks, a currency's sign, the order of a date. A shop shows
/// its way by example, 1234.56 and the 31st of December 2026 as it writes them. Only what is printed is
/// styled; books and diagnostics are written with a point, and figures for programs stay plain.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/currency.hpp>

#include <array>
#include <string>
#include <string_view>

namespace groat {

using MonthNames = std::array<std::string, 12>;

/// What is not declared is written plainly: a point before the decimals, no groups, no sign.
struct Style {
    std::string decimal_mark = ".";
    std::string group_mark = {};   ///< between groups of three digits
    std::string before_money = {}; ///< "$", or "CHF" and a no-break space
    std::string after_money = {};
    /// `{month1}` is a figure; `{day2}` and `{month2}` are figures of two digits, `{year2}` the last
    /// two of the year.
    std::string dates = "{day} {month} {year}";
    bool is_date_shown = false; ///< an example said how dates are written
    MonthNames months = {"January", "February", "March",     "April",   "May",      "June",
                         "July",    "August",   "September", "October", "November", "December"};

    [[nodiscard]] bool has_sign() const { return !before_money.empty() || !after_money.empty(); }
    [[nodiscard]] Style without_sign() const {
        Style bare = *this;
        bare.before_money.clear();
        bare.after_money.clear();
        return bare;
    }
    [[nodiscard]] bool is_plain() const { return decimal_mark == "." && group_mark.empty(); }

    /// A decimal as the library writes it, in this style.
    /// Example  with 1.234,56 declared, "-1234.5"  ->  "-1.234,5"
    [[nodiscard]] std::string number(std::string_view plain) const;
    /// The same with the sign of the currency, a minus before everything.
    /// Example  with $1,234.56 declared, "-12.00"  ->  "-$12.00"
    [[nodiscard]] std::string money(std::string_view plain) const;
    /// Every decimal inside `text`, which is the library's own and holds no name.
    /// Example  "5.07 oz (144 g)"  ->  "5,07 oz (144 g)"
    [[nodiscard]] std::string numbers_in(std::string_view text) const;

    [[nodiscard]] std::string date(Date date) const;
    /// For a column: in figures as declared, else as ISO 8601 has it.
    [[nodiscard]] std::string short_date(Date date) const;
};

/// Takes the style of money from the amount 1234.56 as the shop writes it, with as many decimals as the currency
/// has: 1235 in JPY (or 1234), 1234.560 in KWD. A blank becomes a no-break space, so that no amount is torn apart.
/// Fails    on any other amount, on marks other than `, . ' ’` and blanks, on a sign of more than 8 characters
/// Example  "1.234,56 €"  ->  groups by a point, a comma before decimals, " €" behind
[[nodiscard]] Result<Style> parse_money_style(std::string_view example, Currency currency,
                                              Style style);

/// Takes the style of dates from the 31st of December 2026 as the shop writes it. Day and month in figures
/// between `. / -` and blanks are two digits wide, beside words as short as they can be; the name of the month
/// is `december`.
/// Fails    on any other day, on a date without its day, month or year, on more than 16 characters around them
/// Example  "31.12.2026"  ->  "{day2}.{month2}.{year}"
[[nodiscard]] Result<Style> parse_date_style(std::string_view example, std::string_view december,
                                             Style style);

/// `date` by a pattern as in `Style::dates`.
[[nodiscard]] std::string date_by(std::string_view pattern, MonthNames const& months, Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/style.ipp>
#endif
