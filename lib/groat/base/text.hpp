/// Text as people see it: UTF-8 taken apart into characters, its width in terminal columns, and text from
/// outside made harmless before it is shown.
#pragma once

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
/// characters and emoji, 1 otherwise.
/// Source   Unicode Standard Annex 11 (East Asian Width), its wide ranges drawn together by block
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

inline constexpr Range no_width[] = {
    {0x05BF, 0x05BF}, {0x05C1, 0x05C2}, {0x05C4, 0x05C5}, {0x05C7, 0x05C7},   {0x0670, 0x0670},
    {0x06D6, 0x06DC}, {0x06DF, 0x06E4}, {0x06E7, 0x06E8}, {0x06EA, 0x06ED},   {0x093A, 0x093A},
    {0x094D, 0x094D}, {0x0951, 0x0957}, {0x0962, 0x0963}, {0x1160, 0x11FF},   {0x302A, 0x302D},
    {0x3099, 0x309A}, {0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD},   {0x0610, 0x061A},
    {0x064B, 0x065F}, {0x0900, 0x0902}, {0x093C, 0x093C}, {0x0941, 0x0948},   {0x0E31, 0x0E31},
    {0x0E34, 0x0E3A}, {0x0E47, 0x0E4E}, {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF},   {0x200B, 0x200F},
    {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}, {0xE0100, 0xE01EF},
};
inline constexpr Range wide[] = {
    {0x1100, 0x115F},   {0x2329, 0x232A},   {0x231A, 0x231B},   {0x23E9, 0x23EC},
    {0x2614, 0x2615},   {0x2648, 0x2653},   {0x26AA, 0x26AB},   {0x26C4, 0x26C5},
    {0x2705, 0x2705},   {0x2728, 0x2728},   {0x274C, 0x274C},   {0x2753, 0x2755},
    {0x2757, 0x2757},   {0x2795, 0x2797},   {0x2B50, 0x2B50},   {0x2E80, 0x303E},
    {0x3041, 0x33FF},   {0x3400, 0x4DBF},   {0x4E00, 0x9FFF},   {0xA000, 0xA4CF},
    {0xA960, 0xA97F},   {0xAC00, 0xD7A3},   {0xF900, 0xFAFF},   {0xFE30, 0xFE6F},
    {0xFF00, 0xFF60},   {0xFFE0, 0xFFE6},   {0x1F300, 0x1F64F}, {0x1F680, 0x1F6FF},
    {0x1F900, 0x1FAFF}, {0x20000, 0x3FFFD},
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

inline std::size_t display_width(std::string_view text) {
    std::size_t width = 0;
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        at += next.length;
        if (next.code < 0x300)
            ++width;
        else if (text_tables::holds(text_tables::no_width, next.code))
            continue;
        else
            width += text_tables::holds(text_tables::wide, next.code) ? 2 : 1;
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
    std::size_t width = 0;
    for (std::size_t at = 0; at < shown.size();) {
        std::size_t const length = character_at(shown, at).length;
        std::string_view const piece = std::string_view(shown).substr(at, length);
        if (width + display_width(piece) + 1 > columns) break;
        width += display_width(piece);
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
