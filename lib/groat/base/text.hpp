/// Text as people see it: UTF-8 taken apart into characters, its width in terminal columns, and text from
/// outside made harmless before it is shown.
#pragma once

#include <groat/base/width_tables.hpp>

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// One character of a UTF-8 text and the bytes it took. A byte that starts no valid character stands
/// alone as U+FFFD with `length` 1, so that a walk over any bytes ends and loses nothing.
struct Character {
    char32_t code = 0;
    std::size_t length = 0;
    bool is_valid = true;
};
[[nodiscard]] Character character_at(std::string_view text, std::size_t from);

/// The number of characters in `text`; what columns in diagnostics count.
[[nodiscard]] std::size_t character_count(std::string_view text);

/// The number of terminal columns that `text` takes: 0 for combining marks, 2 for East Asian wide
/// characters and for emoji, however many characters these are put together from, 1 otherwise.
/// Source   Unicode Standard Annex 11 (East Asian Width) and Technical Standard 51 (emoji), version 15.0
[[nodiscard]] std::size_t display_width(std::string_view text);

/// `text` with whatever could steer a terminal or reorder what a reader sees (control characters, escape
/// sequences, bidirectional controls, bytes that are not UTF-8) replaced by U+FFFD, line breaks and tabs
/// by a space. Everything else stays as it is.
[[nodiscard]] std::string printable(std::string_view text);

/// Whether `printable` replaces a character.
[[nodiscard]] constexpr bool is_unsafe(char32_t code);

/// `text` without blanks at either end.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// `text` as `printable`, cut to at most `columns` columns with an ellipsis where something was left off. Marks
/// and the parts of an emoji stay with what they belong to.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t columns);

/// `text` broken at blanks into lines of at most `columns` columns. A longer word stands alone: whole, or
/// broken into as many lines as it takes, but never within what is seen as one character.
enum class LongWord { whole, broken };
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t columns,
                                               LongWord long_word = LongWord::whole);

namespace text_tables_detail {

inline constexpr code_ranges::Range unsafe[] = {
    {0x00, 0x1F},     {0x7F, 0x9F},     {0x061C, 0x061C}, {0x200B, 0x200B}, {0x200E, 0x200F},
    {0x2028, 0x202E}, {0x2060, 0x206F}, {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB}, {0xE0000, 0xE007F},
};

} // namespace text_tables_detail

constexpr bool is_unsafe(char32_t code) {
    return code_ranges::holds(text_tables_detail::unsafe, code);
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/text.ipp>
#endif
