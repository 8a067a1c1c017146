#pragma once

#include <groat/base/text.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <utility>

namespace groat {

GROAT_INLINE Character character_at(std::string_view text, std::size_t from) {
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

GROAT_INLINE std::size_t character_count(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); at += character_at(text, at).length) ++count;
    return count;
}

namespace text_width_detail {

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

/// Measures a text character by character.
class Meter {
public:
    [[nodiscard]] std::size_t width() const { return width_; }

    /// Whether `code` begins a sign of its own rather than going on with the one before.
    bool take(char32_t code) {
        constexpr char32_t as_picture = 0xFE0F;
        constexpr char32_t joiner = 0x200D;
        bool const is_on_picture = base_width_ > 0 && is_picture(base_);
        if (code == as_picture || is_skin_tone(code)) {
            if (is_on_picture) {
                width_ += 2 - base_width_;
                base_width_ = 2;
                return false;
            }
            if (code == as_picture) return false;
        }
        if (code == joiner) {
            is_joined_ = is_on_picture;
            return false;
        }
        if (code >= 0x300 && code_ranges::holds(width_tables::none, code)) return false;
        bool const is_part = is_joined_ && is_picture(code);
        is_joined_ = false;
        if (is_part) return false;
        base_ = code;
        base_width_ = code >= 0x1100 && code_ranges::holds(width_tables::two, code) ? 2 : 1;
        width_ += base_width_;
        return true;
    }

private:
    std::size_t width_ = 0;
    char32_t base_ = 0;          // the last character that took columns
    std::size_t base_width_ = 0; // and how many
    bool is_joined_ = false;     // a picture went on with a joiner
};

/// How many bytes of `text` fit into so many columns: whole signs, and one at least.
inline std::size_t fitting(std::string_view text, std::size_t columns) {
    Meter meter;
    std::size_t sign = 0; // where the last one begins
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        if (meter.take(next.code)) sign = at;
        if (meter.width() > columns && sign > 0) return sign;
        at += next.length;
    }
    return text.size();
}

} // namespace text_width_detail

GROAT_INLINE std::size_t display_width(std::string_view text) {
    text_width_detail::Meter meter;
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        meter.take(next.code);
        at += next.length;
    }
    return meter.width();
}

GROAT_INLINE std::string printable(std::string_view text) {
    std::string shown;
    shown.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        Character const next = character_at(text, at);
        if (next.code == '\n' || next.code == '\t' || next.code == '\r')
            shown += ' ';
        else if (!next.is_valid || is_unsafe(next.code))
            shown += "\uFFFD";
        else
            shown += text.substr(at, next.length);
        at += next.length;
    }
    return shown;
}

GROAT_INLINE std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    std::size_t const first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

GROAT_INLINE std::string shortened(std::string_view text, std::size_t columns) {
    // A hostile text can be megabytes long: look only at as much of it as can be shown.
    std::string shown = printable(text.substr(0, columns * 8 + 8));
    text_width_detail::Meter meter;
    std::size_t room_for = 0; // so much of it leaves a column for the ellipsis
    for (std::size_t at = 0; at < shown.size();) {
        Character const next = character_at(shown, at);
        std::size_t const before = meter.width();
        if (meter.take(next.code) && before < columns) room_for = at;
        at += next.length;
    }
    if (text.size() <= columns * 8 + 8 && meter.width() <= columns) return shown;
    shown.resize(room_for);
    return shown + "…";
}

GROAT_INLINE std::vector<std::string> wrapped(std::string_view text, std::size_t columns,
                                              LongWord long_word) {
    std::vector<std::string> lines;
    std::string line;
    std::size_t line_width = 0;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t const end = std::min(text.find(' ', at), text.size());
        std::string_view word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty()) continue;
        std::size_t width = display_width(word);
        if (!line.empty() && line_width + 1 + width > columns) {
            lines.push_back(std::move(line));
            line.clear();
            line_width = 0;
        }
        while (long_word == LongWord::broken && width > columns) {
            std::size_t const taken = text_width_detail::fitting(word, columns);
            lines.emplace_back(word.substr(0, taken));
            word.remove_prefix(taken);
            width = display_width(word);
        }
        if (word.empty()) continue;
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
