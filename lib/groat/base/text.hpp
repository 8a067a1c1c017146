/// Text as people see it: UTF-8 taken apart into characters, its width in terminal columns, and text from
/// outside made harmless before it is shown.
#pragma once

#include <groat/base/width_tables.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdint>
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

/// `text` without blanks at either end.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// `text` as `printable`, cut to at most `columns` columns with an ellipsis where something was left off.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t columns);

/// `text` broken at blanks into lines of at most `columns` columns; a longer word stands alone, uncut.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t columns);

// ---------------------------------------------------------------------------------------------------

inline Character character_at(std::string_view text, std::size_t from) {
    auto const byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    constexpr Character invalid{0xFFFD, 1, false};
    unsigned const first = byte(from);
    if (first < 0x80) return {first, 1, true};
    std::size_t const length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
    if (first < 0xC2 || first > 0xF4 || from + length > text.size()) return invalid;
    char32_t code = first & (0x7FU >> length);
    for (std::size_t i = 1; i < length; ++i) {
        unsigned const next = byte(from + i);
        if ((next & 0xC0U) != 0x80U) return invalid;
        code = (code << 6U) | (next & 0x3FU);
    }
    constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
    if (code < least[length] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF))
        return invalid;
    return {code, length, true};
}

inline std::size_t character_count(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); at += character_at(text, at).length) ++count;
    return count;
}

namespace text_tables {

struct Range {
    char32_t first;
    char32_t last;
};

inline constexpr Range unsafe[] = {
    {0x00, 0x1F},     {0x7F, 0x9F},     {0x061C, 0x061C}, {0x200B, 0x200B}, {0x200E, 0x200F},
    {0x2028, 0x202E}, {0x2060, 0x206F}, {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB}, {0xE0000, 0xE007F},
};

template <std::size_t N> constexpr bool holds(Range const (&ranges)[N], char32_t code) {
    for (Range const& range : ranges)
        if (code >= range.first && code <= range.last) return true;
    return false;
}

} // namespace text_tables

namespace text_width {

/// Signs that become pictures, two columns wide, where U+FE0F or a tone of skin follows.
/// Source  Unicode Technical Standard 51, emoji-variation-sequences.txt (15.0), drawn together by block
constexpr bool is_picture(char32_t code) {
    if (code < 0x203C)
        return (code >= '0' && code <= '9') || code == '#' || code == '*' || code == 0xA9 ||
               code == 0xAE;
    return code <= 0x2BFF || code == 0x3030 || code == 0x303D || code == 0x3297 || code == 0x3299 ||
           (code >= 0x1F000 && code <= 0x1FAFF);
}
constexpr bool is_skin_tone(char32_t code) { return code >= 0x1F3FB && code <= 0x1F3FF; }

} // namespace text_width

inline std::size_t display_width(std::string_view text) {
    constexpr char32_t as_picture = 0xFE0F;
    constexpr char32_t joiner = 0x200D;
    std::size_t width = 0;
    char32_t base = 0;          // the last character that took columns
    std::size_t base_width = 0; // and how many
    bool is_joined = false;     // a picture went on with a joiner
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        at += next.length;
        bool const is_on_picture = base_width > 0 && text_width::is_picture(base);
        if (next.code == as_picture || text_width::is_skin_tone(next.code)) {
            if (is_on_picture) {
                width += 2 - base_width;
                base_width = 2;
                continue;
            }
            if (next.code == as_picture) continue;
        }
        if (next.code == joiner) {
            is_joined = is_on_picture;
            continue;
        }
        if (next.code >= 0x300 && width_tables::holds(width_tables::none, next.code)) continue;
        std::size_t const own =
            next.code >= 0x1100 && width_tables::holds(width_tables::two, next.code) ? 2 : 1;
        if (is_joined && text_width::is_picture(next.code)) {
            is_joined = false;
            continue;
        }
        is_joined = false;
        base = next.code;
        base_width = own;
        width += own;
    }
    return width;
}

inline std::string printable(std::string_view text) {
    std::string shown;
    shown.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        if (next.code == '\n' || next.code == '\t' || next.code == '\r')
            shown += ' ';
        else if (!next.is_valid || text_tables::holds(text_tables::unsafe, next.code))
            shown += "\uFFFD";
        else
            shown += text.substr(at, next.length);
        at += next.length;
    }
    return shown;
}

inline std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    std::size_t const first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

inline std::string shortened(std::string_view text, std::size_t columns) {
    // A hostile text can be megabytes long: look only at as much of it as can be shown.
    std::string const shown = printable(text.substr(0, columns * 8 + 8));
    if (text.size() <= columns * 8 + 8 && display_width(shown) <= columns) return shown;
    std::string cut;
    for (std::size_t at = 0; at < shown.size();) {
        std::size_t const length = character_at(shown, at).length;
        std::string_view const piece = std::string_view(shown).substr(at, length);
        if (display_width(cut + std::string(piece)) + 1 > columns) break;
        cut += piece;
        at += length;
    }
    return cut + "…";
}

inline std::vector<std::string> wrapped(std::string_view text, std::size_t columns) {
    std::vector<std::string> lines;
    std::string line;
    std::size_t line_width = 0;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t const end = std::min(text.find(' ', at), text.size());
        std::string_view const word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty()) continue;
        std::size_t const width = display_width(word);
        if (!line.empty() && line_width + 1 + width > columns) {
            lines.push_back(std::move(line));
            line.clear();
            line_width = 0;
        }
        if (!line.empty()) {
            line += ' ';
            ++line_width;
        }
        line += word;
        line_width += width;
    }
    if (!line.empty() || lines.empty()) lines.push_back(std::move(line));
    return lines;
}

} // namespace groat
