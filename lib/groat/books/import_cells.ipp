#pragma once

#include <groat/books/import_cells.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace import_cells_detail {

/// The blanks that spreadsheets put into numbers, without and with a width of their own.
inline constexpr std::string_view blanks[] = {" ", "\t", "\u00A0", "\u202F", "\u2009"};

GROAT_INLINE std::string_view bare(std::string_view text) {
    std::size_t before = 0;
    do {
        before = text.size();
        text = trimmed(text);
        for (std::string_view const blank : blanks) {
            if (text.starts_with(blank)) text.remove_prefix(blank.size());
            if (text.ends_with(blank)) text.remove_suffix(blank.size());
        }
    } while (text.size() < before);
    return text;
}

/// The length of a mark for thousands that stands at byte `at`, or 0.
inline std::size_t thousands_at(std::string_view text, std::size_t at, NumberMarks const& marks) {
    using Thousands = NumberMarks::Thousands;
    std::string_view const rest = text.substr(at);
    auto const length = [&](std::string_view mark) {
        return rest.starts_with(mark) ? mark.size() : 0;
    };
    switch (marks.thousands) {
    case Thousands::none: return 0;
    case Thousands::comma: return length(",");
    case Thousands::point: return length(".");
    case Thousands::apostrophe: return std::max(length("'"), length("\u2019"));
    case Thousands::space:
        for (std::string_view const blank : blanks)
            if (length(blank) > 0) return blank.size();
        return 0;
    }
    return 0;
}

inline std::string_view marks_words(NumberMarks const& marks) {
    return marks.has_decimal_comma
               ? "this list has a decimal comma; say in the map if it marks thousands: 'thousands: "
                 "point'"
               : "this list has a decimal point; say in the map what it has: 'decimal: comma', "
                 "'thousands: comma'";
}

/// What a spreadsheet may take for a formula.
inline bool looks_like_formula(std::string_view text) {
    return !text.empty() && std::string_view("=+-@").find(text.front()) != std::string_view::npos;
}

inline bool take_from_ends(std::string_view& text, std::string_view part) {
    if (part.empty()) return false;
    if (text.starts_with(part))
        text.remove_prefix(part.size());
    else if (text.ends_with(part))
        text.remove_suffix(part.size());
    else
        return false;
    text = bare(text);
    return true;
}

GROAT_INLINE std::string in_our_units(std::string_view text, ImportMap const& map) {
    if (auto const whole = map.units.find(text); whole != map.units.end()) return whole->second;
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && text[end] != ' ' && !number_detail::is_digit(text[end])) ++end;
        if (end == at) {
            result += text[at++];
            continue;
        }
        std::string_view const word = text.substr(at, end - at);
        bool const is_behind_number = !trimmed(text.substr(0, at)).empty();
        auto const ours = map.units.find(word);
        if (ours != map.units.end()) {
            // `3 CS` of twelve each: packs in a pack
            if (!result.empty() && result.back() != ' ') result += ' ';
            if (is_behind_number && number_detail::is_digit(ours->second.front())) result += "x ";
            result += ours->second;
        } else if (is_behind_number && (word == "X" || word == "*")) {
            result += 'x';
        } else if (is_behind_number && word == "/" && map.slash == Slash::packs) {
            result += " x ";
        } else {
            result += word;
        }
        at = end;
    }
    return result;
}

GROAT_INLINE bool has_slash(std::string_view text) {
    for (std::size_t at = text.find('/'); at != std::string_view::npos;
         at = text.find('/', at + 1)) {
        std::string_view const before = trimmed(text.substr(0, at));
        std::string_view const behind = trimmed(text.substr(at + 1));
        if (!before.empty() && !behind.empty() && number_detail::is_digit(before.back()) &&
            number_detail::is_digit(behind.front()))
            return true;
    }
    return false;
}

} // namespace import_cells_detail

GROAT_INLINE Result<std::string> plain_numbers(std::string_view text, NumberMarks const& marks) {
    namespace grammar = number_detail;
    char const decimal = marks.has_decimal_comma ? ',' : '.';
    std::string plain;
    for (std::size_t at = 0; at < text.size();) {
        auto const digits = [&] { return grammar::digits_at(text, at); };
        bool const is_point = text[at] == '.' || text[at] == ',';
        if (!grammar::is_digit(text[at]) && !(is_point && grammar::digits_at(text, at + 1) > 0)) {
            plain += text[at++];
            continue;
        }
        std::size_t const begin = at;
        std::size_t count = digits();
        plain += text.substr(at, count);
        at += count;
        bool is_grouped = count >= 1 && count <= 3;
        while (is_grouped && at < text.size()) {
            std::size_t const mark = import_cells_detail::thousands_at(text, at, marks);
            if (mark == 0 || grammar::digits_at(text, at + mark) != 3) break;
            plain += text.substr(at + mark, 3);
            at += mark + 3;
        }
        if (at < text.size() && text[at] == decimal && grammar::digits_at(text, at + 1) > 0) {
            plain += '.';
            ++at;
            count = digits();
            plain += text.substr(at, count);
            at += count;
        }
        bool const goes_on = at < text.size() && (text[at] == '.' || text[at] == ',') &&
                             grammar::digits_at(text, at + 1) > 0;
        if (goes_on || at == begin)
            return refuse("bad-number",
                          fmt::format("the marks in the number '{}' do not fit",
                                      shortened(text.substr(begin), 32)),
                          std::string(import_cells_detail::marks_words(marks)));
    }
    return plain;
}

GROAT_INLINE Result<Money> parse_price_cell(std::string_view cell, ImportMap const& map,
                                            Currency currency) {
    std::string_view text = import_cells_detail::bare(cell);
    auto const bad = [&](std::string_view why, std::string help) {
        return refuse("bad-price",
                      fmt::format("the price '{}' cannot be read: {}", shortened(cell, 40), why),
                      std::move(help));
    };
    if (text.empty())
        return refuse("missing-price", "the price is missing",
                      "fill it in, or put the code among those to ignore in the map");
    if (import_cells_detail::looks_like_formula(text))
        return bad("a price is a number, and this begins like a formula or a sign",
                   "write the number alone; nothing is calculated here");
    (void)import_cells_detail::take_from_ends(text, map.currency_sign);
    (void)import_cells_detail::take_from_ends(text, map.currency_code);
    auto const plain = plain_numbers(text, map.marks);
    if (!plain) return bad(plain.error().what, plain.error().help);
    std::string_view const digits = *plain;
    if (digits.find_first_not_of("0123456789.") != std::string_view::npos || digits.empty()) {
        bool const has_digit = digits.find_first_of("0123456789") != std::string_view::npos;
        return bad("it is not a number alone",
                   has_digit ? "a currency beside it is declared in the map: 'currency: EUR', "
                               "'currency sign: $'"
                             : "fill it in, or put the code among those to ignore in the map");
    }
    auto number = parse_number(digits);
    if (!number) return bad(number.error().what, number.error().help);
    return Money(*std::move(number), currency);
}

} // namespace groat
