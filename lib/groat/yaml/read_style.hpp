/// `language`, `money` and `dates` of `sheets:` in shop.yaml.
#pragma once

#include <groat/model/sheet_rule.hpp>
#include <groat/yaml/read_common.hpp>

#include <string>
#include <utility>

namespace groat {

/// Reads its fields from those of `sheets:`. The words of words.yaml are the shop's where there are any.
inline void read_style(Fields& fields, SheetRule& rule, Reading const& reading);

// ---------------------------------------------------------------------------------------------------

namespace read_style_parts {

inline void read_language(Node const* node, SheetRule& rule, Reading const& reading) {
    auto language = read_scalar(node, "a language", reading, parse_language);
    if (!language) return;
    if (reading.own_words) {
        std::string const& own = reading.own_words->language();
        if (!own.empty() && own != *language)
            reading.found.error(node->where, "two-languages",
                                fmt::format("the sheets speak '{}', but words.yaml holds words of "
                                            "'{}'",
                                            *language, own),
                                "write the same in both, or take one out");
        return;
    }
    if (!Words::is_shipped(*language))
        reading.found.error(node->where, "unknown-language",
                            fmt::format("no words of '{}' come with groat", *language),
                            "en and de do; write others into words.yaml: 'groat words' lists them");
    rule.words = Words(*std::move(language));
}

} // namespace read_style_parts

inline void read_style(Fields& fields, SheetRule& rule, Reading const& reading) {
    read_style_parts::read_language(fields.optional("language"), rule, reading);
    auto const take = [&](char const* key, char const* what, auto parse) {
        if (auto style = read_scalar(fields.optional(key), what, reading, parse))
            rule.style = *std::move(style);
    };
    take("money", "the amount 1234.56 as you write it", [&](std::string_view text) {
        return parse_money_style(text, reading.currency, rule.style);
    });
    take("dates", "the 31st of December 2026 as you write it", [&](std::string_view text) {
        return parse_date_style(text, rule.words("december"), rule.style);
    });
    // a month that is named is named in the language of the example
    if (rule.style.is_date_shown) rule.style.months = rule.words.months();
}

} // namespace groat
