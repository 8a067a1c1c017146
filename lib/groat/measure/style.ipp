#pragma once

#include <groat/measure/style.hpp>

#include <groat/base/fill.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace groat {

namespace style_detail {

inline constexpr std::string_view no_break_space = "\u00A0";
inline constexpr std::string_view narrow_space = "\u202F";

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Blanks as no-break spaces.
inline std::string unbroken(std::string_view text) {
    std::string result;
    for (char const c : text) {
        if (c == ' ')
            result += no_break_space;
        else
            result += c;
    }
    return result;
}

inline bool is_mark(std::string_view text) {
    for (std::string_view const mark :
         {std::string_view(","), std::string_view("."), std::string_view("'"),
          std::string_view("’"), std::string_view(" "), no_break_space, narrow_space})
        if (text == mark) return true;
    return false;
}

inline std::string amount_to_write(Currency currency) {
    std::string text = "1234";
    if (currency.minor_digits() > 0)
        text += "." + std::string("5600").substr(0, currency.minor_digits());
    return text;
}

/// What may stand before or after an amount: letters and signs of currencies; of what else ASCII has, `$`, blanks
/// and, behind a letter, a point. Parentheses would read as a loss, a percent sign as a rate.
inline bool is_sign(std::string_view text) {
    constexpr std::size_t longest = 8;
    bool has_letter = false;
    for (char const c : text) {
        bool const is_letter =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '$' || (c & 0x80) != 0;
        has_letter = has_letter || is_letter;
        if (!is_letter && c != ' ' && !(c == '.' && has_letter)) return false;
    }
    return character_count(text) <= longest && printable(text) == text;
}

} // namespace style_detail

GROAT_INLINE std::string Style::number(std::string_view plain) const {
    if (is_plain()) return std::string(plain);
    std::size_t const first = plain.find_first_of("0123456789");
    if (first == std::string_view::npos) return std::string(plain);
    std::size_t const point = std::min(plain.find('.', first), plain.size());
    std::string text(plain.substr(0, first));
    for (std::size_t i = first; i < point; ++i) {
        if (i > first && (point - i) % 3 == 0) text += group_mark;
        text += plain[i];
    }
    if (point == plain.size()) return text;
    return text + decimal_mark + std::string(plain.substr(point + 1));
}

GROAT_INLINE std::string Style::money(std::string_view plain) const {
    std::size_t const first = std::min(plain.find_first_not_of("+-"), plain.size());
    return std::string(plain.substr(0, first)) + before_money + number(plain.substr(first)) +
           after_money;
}

GROAT_INLINE std::string Style::numbers_in(std::string_view text) const {
    using style_detail::is_digit;
    if (is_plain()) return std::string(text);
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        if (!is_digit(text[at])) {
            result += text[at++];
            continue;
        }
        std::size_t end = at;
        while (end < text.size() && is_digit(text[end])) ++end;
        if (end + 1 < text.size() && text[end] == '.' && is_digit(text[end + 1]))
            for (++end; end < text.size() && is_digit(text[end]);) ++end;
        result += number(text.substr(at, end - at));
        at = end;
    }
    return result;
}

GROAT_INLINE std::string date_by(std::string_view pattern, MonthNames const& months, Date date) {
    std::chrono::year_month_day const day(date);
    unsigned const month = static_cast<unsigned>(day.month());
    int const year = static_cast<int>(day.year());
    unsigned const in_month = static_cast<unsigned>(day.day());
    return filled(pattern, {{"day", fmt::format("{}", in_month)},
                            {"day2", fmt::format("{:02}", in_month)},
                            {"month", months[month - 1]},
                            {"month1", fmt::format("{}", month)},
                            {"month2", fmt::format("{:02}", month)},
                            {"year", fmt::format("{}", year)},
                            {"year2", fmt::format("{:02}", year % 100)}});
}

GROAT_INLINE std::string Style::date(Date date) const { return date_by(dates, months, date); }

GROAT_INLINE std::string Style::short_date(Date date) const {
    bool const is_in_figures = is_date_shown && dates.find("{month}") == std::string::npos;
    return is_in_figures ? this->date(date) : iso_date(date);
}

GROAT_INLINE Result<Style> parse_money_style(std::string_view example, Currency currency,
                                             Style style) {
    std::string const wanted = style_detail::amount_to_write(currency);
    std::string_view const decimals = std::string_view(wanted).substr(4);
    auto const bad = [&](std::string what) {
        return refuse("bad-money-style", std::move(what),
                      currency.minor_digits() == 0
                          ? fmt::format("write the amount 1234 your way, as 1,234{}",
                                        currency.is_none() ? "" : "; this currency has no decimals")
                          : fmt::format("write the amount {} your way, as $1,234.{} or 1.234,{} €",
                                        wanted, decimals.substr(1), decimals.substr(1)));
    };
    auto const other_amount = [&] {
        return bad(fmt::format("'{}' is not the amount {}", shortened(example, 32), wanted));
    };
    std::size_t const first = example.find_first_of("0123456789");
    if (first == std::string_view::npos) return other_amount();
    std::size_t const last = example.find_last_of("0123456789");
    std::string_view const before = example.substr(0, first);
    std::string_view const after = example.substr(last + 1);
    std::string_view rest = example.substr(first, last + 1 - first);
    // The digits in their groups, and the marks between them.
    std::vector<std::string_view> digits;
    std::vector<std::string_view> marks;
    while (!rest.empty()) {
        std::size_t const count = std::min(rest.find_first_not_of("0123456789"), rest.size());
        digits.push_back(rest.substr(0, count));
        rest.remove_prefix(count);
        if (rest.empty()) break;
        std::size_t const next = rest.find_first_of("0123456789");
        marks.push_back(rest.substr(0, next));
        rest.remove_prefix(next);
    }
    std::size_t const has_decimals = currency.minor_digits() > 0 ? 1 : 0;
    std::size_t const parts = digits.size() - has_decimals;
    auto const is_whole_part = [&](std::string_view written) {
        return written == "1234" || (has_decimals == 0 && written == "1235");
    };
    bool const has_group = parts == 2 && digits[0] == "1" && digits[1].size() == 3 &&
                           is_whole_part("1" + std::string(digits[1]));
    bool const is_amount = digits.size() > has_decimals &&
                           (has_group || (parts == 1 && is_whole_part(digits[0]))) &&
                           (has_decimals == 0 || digits.back() == decimals.substr(1));
    if (!is_amount) return other_amount();
    for (std::string_view const mark : marks)
        if (!style_detail::is_mark(mark))
            return bad(fmt::format("'{}' cannot stand between the digits of an amount",
                                   shortened(mark, 16)));
    for (std::string_view const sign : {before, after})
        if (!style_detail::is_sign(sign))
            return bad(fmt::format("'{}' cannot stand beside an amount: that takes at most 8 "
                                   "letters or signs of a currency",
                                   shortened(sign, 16)));
    style.group_mark = has_group ? style_detail::unbroken(marks.front()) : std::string();
    style.decimal_mark = has_decimals == 1 ? std::string(marks.back()) : std::string();
    if (has_decimals == 1 && style.decimal_mark != "." && style.decimal_mark != ",")
        return bad(fmt::format("'{}' cannot stand before decimals: write , or .",
                               shortened(marks.back(), 16)));
    if (has_decimals == 1 && style.group_mark == style.decimal_mark)
        return bad(
            fmt::format("groups and decimals have the same mark in '{}'", shortened(example, 32)));
    if (has_decimals == 0) // figures other than money have decimals still
        style.decimal_mark = style.group_mark == "." ||
                                     style.group_mark == style_detail::unbroken(" ") ||
                                     style.group_mark == style_detail::narrow_space
                                 ? ","
                                 : ".";
    style.before_money = style_detail::unbroken(before);
    style.after_money = style_detail::unbroken(after);
    return style;
}

GROAT_INLINE Result<Style> parse_date_style(std::string_view example, std::string_view december,
                                            Style style) {
    auto const bad = [&](std::string what) {
        return refuse("bad-date-style", std::move(what),
                      fmt::format("write the 31st of December 2026 your way, as 31.12.2026, "
                                  "12/31/2026 or 31 {} 2026",
                                  december));
    };
    auto const other_day = [&] {
        return bad(fmt::format("'{}' is not the 31st of December 2026", shortened(example, 32)));
    };
    std::string pattern;
    bool has_day = false;
    bool has_month = false;
    bool has_year = false;
    bool has_words = false;
    std::size_t around = 0; // characters that are no part of the date itself
    auto const put = [&](bool& is_there, std::string_view part) {
        bool const is_first = !is_there;
        is_there = true;
        pattern += part;
        return is_first;
    };
    for (std::size_t at = 0; at < example.size();) {
        std::string_view const rest = example.substr(at);
        std::size_t taken = 0;
        bool is_good = true;
        if (!december.empty() && rest.starts_with(december)) {
            is_good = put(has_month, "{month}");
            has_words = true;
            taken = december.size();
        }
        if (taken == 0 && style_detail::is_digit(rest.front())) {
            taken = std::min(rest.find_first_not_of("0123456789"), rest.size());
            std::string_view const digits = rest.substr(0, taken);
            is_good = digits == "31"     ? put(has_day, "{day2}")
                      : digits == "12"   ? put(has_month, "{month2}")
                      : digits == "2026" ? put(has_year, "{year}")
                      : digits == "26"   ? put(has_year, "{year2}")
                                         : false;
        } else if (taken == 0) {
            taken = character_at(example, at).length;
            pattern += rest.substr(0, taken);
            has_words =
                has_words || std::string_view("./- ").find(rest.front()) == std::string_view::npos;
            ++around;
        }
        if (!is_good) return other_day();
        at += taken;
    }
    constexpr std::size_t most_around = 16;
    if (!has_day || !has_year) return other_day();
    if (!has_month)
        return bad(fmt::format("'{}' does not name the month: it is 12 or '{}'",
                               shortened(example, 32), december));
    if (around > most_around || printable(example) != example ||
        example.find_first_of("{}") != std::string_view::npos)
        return bad(fmt::format("'{}' holds more than a date", shortened(example, 32)));
    // "05.03.2027", but "5 March 2027" and "2027年3月5日"
    if (has_words)
        for (auto const& [wide, plain] : {std::pair("{day2}", "{day}"), {"{month2}", "{month1}"}})
            if (auto const at = pattern.find(wide); at != std::string::npos)
                pattern.replace(at, std::string_view(wide).size(), plain);
    style.dates = std::move(pattern);
    style.is_date_shown = true;
    return style;
}

} // namespace groat
