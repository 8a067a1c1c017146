/// A price list as the YAML that the books are kept in. What is written reads back (see read_prices.hpp) as
/// the same list, whatever its names hold: quotation marks, colons, '#', control characters, any script.
#pragma once

#include <groat/books/read_prices.hpp>

#include <string>
#include <string_view>

namespace groat {

/// The YAML of a list, `note` in front of it as a comment. Amounts are exact: decimals where they end,
/// else fractions. What all offers have in common (`from`, `tax included`) is said once.
///
/// Names are as the reader gives them: not empty, without blanks at their ends. Throws `std::logic_error`
/// when the offers do not agree on the tax that their prices contain.
/// Example  `- {item: plum, pack: 30 lb, price: 49.80, code: PL-22}`
[[nodiscard]] std::string write_price_list(PriceList const& list, std::string_view note = {});

/// Text as a YAML scalar for every place, between brackets and as a key as well: plain where nobody could
/// misread it, else in quotation marks.
/// Example  `plum`  ->  `plum`;  `no: 5 "large"`  ->  `"no: 5 \"large\""`
[[nodiscard]] std::string yaml_text(std::string_view text);

/// An exact number as the books write it, with at least `places` digits behind the point.
/// Example  `number_text(Number(69) / 5, 2)`  ->  "13.80";  `number_text(Number(1) / 3, 2)`  ->  "1/3"
[[nodiscard]] std::string number_text(Number const& number, unsigned places = 0);

namespace write_prices_detail {

std::string percent_text(Number const& share);

std::string money_text(Money const& money);

/// A pack as it was written, else in base units.
std::string pack_text(Quantity const& pack, std::string const& written);

} // namespace write_prices_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/write_prices.ipp>
#endif
