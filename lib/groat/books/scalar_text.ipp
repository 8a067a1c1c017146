#pragma once

#include <groat/books/scalar_text.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <string>

namespace groat {

namespace scalar_text_detail {

GROAT_INLINE bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// A flaw found in a part of a text, for the whole of it.
inline Refused shifted(Flaw flaw, std::size_t by) {
    flaw.at += by;
    return Refused(std::move(flaw));
}

GROAT_INLINE std::size_t begin_of(std::string_view part, std::string_view whole) {
    return part.empty() ? whole.size() : static_cast<std::size_t>(part.data() - whole.data());
}

struct Parted {
    std::string_view left;
    std::string_view right;
};

/// The text before and behind its last ` per ` or, failing that, its last `/`.
inline std::optional<Parted> parted(std::string_view text) {
    std::size_t at = text.rfind(" per ");
    std::size_t width = 5;
    if (at == std::string_view::npos) {
        at = text.rfind('/');
        width = 1;
    }
    if (at == std::string_view::npos) return std::nullopt;
    return Parted{trimmed(text.substr(0, at)), trimmed(text.substr(at + width))};
}

inline constexpr std::string_view drivers[] = {"labour hour", "oven hour",   "order",
                                               "piece",       "ingredients", "prime cost"};

} // namespace scalar_text_detail

GROAT_INLINE Result<Money> parse_money(std::string_view text, Currency currency) {
    std::string_view const all = trimmed(text);
    std::string_view amount = all;
    std::string_view code;
    std::size_t letters = 0;
    if (!all.empty() && scalar_text_detail::is_letter(all.front())) {
        while (letters < all.size() && scalar_text_detail::is_letter(all[letters])) ++letters;
        code = all.substr(0, letters);
        amount = trimmed(all.substr(letters));
    } else if (!all.empty() && scalar_text_detail::is_letter(all.back())) {
        while (letters < all.size() && scalar_text_detail::is_letter(all[all.size() - 1 - letters]))
            ++letters;
        code = all.substr(all.size() - letters);
        amount = trimmed(all.substr(0, all.size() - letters));
    }
    bool const begins_as_number =
        !amount.empty() &&
        (number_detail::is_digit(amount.front()) || amount.front() == '-' ||
         amount.front() == '.' || number_detail::vulgar_at(amount, 0) != nullptr);
    if (!begins_as_number || (!code.empty() && code.size() != 3))
        return refuse("bad-money",
                      fmt::format("'{}' is not an amount of money", shortened(all, 32)),
                      "write the number alone, as 13.80: the currency is said once, in shop.yaml");
    if (!code.empty() && !currency.is_none() && code != currency.code()) {
        std::size_t const at = scalar_text_detail::begin_of(code, text);
        if (!Currency::find(code))
            return refuse("bad-money", fmt::format("'{}' is not a currency", code),
                          fmt::format("the currency of these books is {}", currency.code()), at,
                          code.size());
        return refuse("wrong-currency",
                      fmt::format("this amount is in {}, but the books are kept in {}", code,
                                  currency.code()),
                      fmt::format("write what it is in {}", currency.code()), at, code.size());
    }
    auto number = parse_number(amount);
    if (!number)
        return scalar_text_detail::shifted(number.error(),
                                           scalar_text_detail::begin_of(amount, text));
    if (number->is_negative())
        return refuse("negative-money",
                      fmt::format("an amount of money cannot be below 0 here, as '{}' is",
                                  shortened(all, 32)));
    return Money(*std::move(number), currency);
}

GROAT_INLINE Result<MoneyRate> parse_money_rate(std::string_view text, Dimension dimension,
                                                Currency currency, Measures measures) {
    std::string_view const example = dimension == Dimension::time       ? "21.00 / h"
                                     : dimension == Dimension::energy   ? "0.18 / kWh"
                                     : dimension == Dimension::distance ? "0.60 / km"
                                                                        : "5.00 / kg";
    std::string const help = fmt::format("write money and what it is for, as {}", example);
    auto const parts = scalar_text_detail::parted(text);
    if (!parts)
        return refuse("bad-rate",
                      fmt::format("'{}' does not say what the money is for", shortened(text, 32)),
                      help);
    auto amount = parse_money(parts->left, currency);
    if (!amount)
        return scalar_text_detail::shifted(amount.error(),
                                           scalar_text_detail::begin_of(parts->left, text));
    Unit const* const unit = find_unit(parts->right, measures);
    if (unit == nullptr || unit->dimension != dimension)
        return refuse("bad-rate",
                      fmt::format("'{}' is not a unit of {}", shortened(parts->right, 32),
                                  to_text(dimension)),
                      help, scalar_text_detail::begin_of(parts->right, text), parts->right.size());
    return MoneyRate{*std::move(amount), unit};
}

GROAT_INLINE Result<OverheadRate> parse_overhead_rate(std::string_view text, Currency currency) {
    constexpr auto help = "write it as '6.40 per labour hour' (or oven hour, order, piece) or as "
                          "'2 % of ingredients' (or of prime cost)";
    std::size_t at = text.rfind(" per ");
    bool const is_share = at == std::string_view::npos;
    if (is_share) at = text.rfind(" of ");
    if (at == std::string_view::npos)
        return refuse(
            "bad-rate",
            fmt::format("'{}' does not say how the overhead is spread", shortened(text, 48)), help);
    std::string_view const left = trimmed(text.substr(0, at));
    std::string_view const word = trimmed(text.substr(at + 4));
    OverheadRate result;
    std::size_t driver = is_share ? 4 : 0; // shares are taken of the last two only
    std::size_t const end = is_share ? 6 : 4;
    while (driver < end && scalar_text_detail::drivers[driver] != word) ++driver;
    if (driver == end)
        return refuse("bad-rate",
                      fmt::format("an overhead is not spread {} '{}'", is_share ? "over" : "per",
                                  shortened(word, 32)),
                      help, scalar_text_detail::begin_of(word, text), word.size());
    result.driver = static_cast<Overhead::Driver>(driver);
    if (!is_share) {
        auto amount = parse_money(left, currency);
        if (!amount)
            return scalar_text_detail::shifted(amount.error(),
                                               scalar_text_detail::begin_of(left, text));
        result.amount = *std::move(amount);
        return result;
    }
    auto percent = parse_percent(left);
    if (!percent)
        return scalar_text_detail::shifted(percent.error(),
                                           scalar_text_detail::begin_of(left, text));
    auto share = Surcharge::of(*std::move(percent));
    if (!share) return Refused(share.error());
    result.share = *std::move(share);
    return result;
}

GROAT_INLINE Result<Days> parse_days(std::string_view text) {
    std::string_view number = trimmed(text);
    if (number.ends_with("days"))
        number.remove_suffix(4);
    else if (number.ends_with("day"))
        number.remove_suffix(3);
    number = trimmed(number);
    constexpr int most = 36525;
    int days = 0;
    bool is_whole = !number.empty();
    for (char const c : number) {
        is_whole = is_whole && number_detail::is_digit(c);
        if (!is_whole || days > most) break;
        days = days * 10 + (c - '0');
    }
    if (!is_whole)
        return refuse("bad-days", fmt::format("'{}' is not a number of days", shortened(text, 32)),
                      "write whole days, as 14 days");
    if (days > most)
        return refuse("bad-days",
                      fmt::format("'{}' is longer than a hundred years", shortened(text, 32)),
                      "write whole days, as 14 days");
    return Days(days);
}

GROAT_INLINE Result<bool> parse_yes_no(std::string_view text) {
    if (text == "yes") return true;
    if (text == "no") return false;
    return refuse("bad-yes-no", fmt::format("'{}' is neither yes nor no", shortened(text, 32)),
                  "write yes or no");
}

} // namespace groat
