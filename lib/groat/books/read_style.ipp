#pragma once

#include <groat/books/read_style.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/read_words.hpp>

#include <fmt/ranges.h>

#include <string>
#include <utility>

namespace groat {

namespace read_style_detail {

/// Says whether it is known in which language the shop names its months.
inline bool read_language(Node const* node, SheetRule& rule, Reading const& reading) {
    bool const has_own = reading.own_words && !reading.own_words->language().empty();
    if (node == nullptr) return has_own || !reading.own_words;
    auto language = read_scalar(node, "a language", reading, parse_language);
    if (!language) return false;
    if (reading.own_words && reading.own_words->language() != undetermined) {
        std::string const& own = reading.own_words->language();
        bool const is_other = has_own && own != *language;
        if (is_other)
            reading.found.error(node->where, "two-languages",
                                fmt::format("the sheets speak '{}', but words.yaml holds words of "
                                            "'{}'",
                                            *language, own),
                                "write the same in both, or take one out");
        return has_own && !is_other;
    }
    bool const is_known = Words::is_shipped(*language);
    if (!is_known)
        reading.found.error(node->where, "unknown-language",
                            fmt::format("no words of '{}' come with groat", *language),
                            fmt::format("{} do; write others into words.yaml: 'groat words' lists "
                                        "them",
                                        fmt::join(shipped_languages, " and ")));
    rule.words = rule.words.in(*std::move(language));
    return is_known;
}

} // namespace read_style_detail

GROAT_INLINE void read_style(Fields<shapes::sheets>& fields, SheetRule& rule,
                             Reading const& reading) {
    bool const is_language_known =
        read_style_detail::read_language(fields.at("language"), rule, reading);
    Node const* const money = fields.at("money");
    Node const* const dates = fields.at("dates");
    auto const take = [&](Node const* node, char const* what, auto parse) {
        if (auto style = read_scalar(node, what, reading, parse)) rule.style = *std::move(style);
    };
    take(money, "the amount 1234.56 as you write it", [&](std::string_view text) {
        return parse_money_style(text, reading.currency, rule.style);
    });
    if (!is_language_known) return;
    take(dates, "the 31st of December 2026 as you write it", [&](std::string_view text) {
        return parse_date_style(text, rule.words("december"), rule.style);
    });
    // a month that is named is named in the language of the example
    if (rule.style.is_date_shown) rule.style.months = rule.words.months();
}

} // namespace groat
