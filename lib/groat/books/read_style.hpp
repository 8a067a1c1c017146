/// `language`, `money` and `dates` of `sheets:` in shop.yaml.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/sheet_rule.hpp>
#include <string_view>

namespace groat::shapes {

inline constexpr Value a_colour = written(ValueKind::text, "a colour");
inline constexpr KeyShape colour_keys[] = {
    {"mark", may, a_colour, "'#7a3b12'", "The colour of lines and bars."},
    {"ink", may, a_colour, "'#222222'", "The colour of text."},
};
inline constexpr Shape colours{"colours", "the colours", colour_keys};

inline constexpr KeyShape sheets_keys[] = {
    {"language", may, a_language, "de", "The language of sheets that leave the house."},
    {"money", may, written(ValueKind::text, "the amount 1234.56 as you write it"), "'1,234.56'",
     "How amounts are written."},
    {"dates", may, written(ValueKind::text, "the 31st of December 2026 as you write it"),
     "31 December 2026", "How dates are written."},
    {"logo", may, written(ValueKind::text, "the name of a file"), "logo.svg",
     "A picture in the folder, SVG or PNG, for the head of pages."},
    {"colours", may, mapping(colours), "{mark: '#7a3b12'}", "The colours of pages."},
};
inline constexpr Synonym sheets_synonyms[] = {{"currency", "money"}};
inline constexpr Shape sheets{"sheets", "the sheets", sheets_keys, sheets_synonyms};

} // namespace groat::shapes

namespace groat {

/// Reads its fields from those of `sheets:`. The words of words.yaml are the shop's where there are any.
void read_style(Fields<shapes::sheets>& fields, SheetRule& rule, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_style.ipp>
#endif
