/// The small languages of the books that no other layer knows: amounts of money with and without a
/// currency, money rates, overhead rates, days, yes and no. Text to value; where it stood is for the caller.
#pragma once

#include <groat/model/shop.hpp>

#include <string_view>

namespace groat {

/// Reads `13.80`, `13.80 EUR` or `EUR 13.80`.
///
/// The code has to be that of `currency`, whatever it is while the currency of the books is not known.
/// Fails    on a currency sign, another currency, and a negative amount
[[nodiscard]] Result<Money> parse_money(std::string_view text, Currency currency);

/// Reads `21.00 / h`, `0.18 / kWh` or `0.60 per km`: money for each unit of `dimension`.
[[nodiscard]] Result<MoneyRate> parse_money_rate(std::string_view text, Dimension dimension,
                                                 Currency currency, Measures measures);

/// How an overhead is spread.
struct OverheadRate {
    Overhead::Driver driver = Overhead::Driver::order;
    Money amount = {};
    Surcharge share = {};
};

/// Reads `6.40 per labour hour` (or oven hour, order, piece) or `2 % of ingredients` (or prime cost).
[[nodiscard]] Result<OverheadRate> parse_overhead_rate(std::string_view text, Currency currency);

/// Reads `14 days`, `1 day` or `14`: whole days, none to a hundred years.
[[nodiscard]] Result<Days> parse_days(std::string_view text);

/// Reads `yes` or `no`.
[[nodiscard]] Result<bool> parse_yes_no(std::string_view text);

namespace scalar_text_detail {

bool is_letter(char c);

/// Where `part`, which is a view into `whole`, begins.
std::size_t begin_of(std::string_view part, std::string_view whole);

} // namespace scalar_text_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/scalar_text.ipp>
#endif
