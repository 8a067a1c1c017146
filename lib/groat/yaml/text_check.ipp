#pragma once

#include <groat/yaml/text_check.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE Places::Places(std::string_view text) : text_(text) {
    Stop stop{0, 1, 1};
    stops_.reserve(text.size() / stride + 1);
    stops_.push_back(stop);
    while (stop.at + stride < text.size()) {
        walk(stop, stop.at + stride);
        stops_.push_back(stop);
    }
}

/// A column counts the characters before it, so it grows with every byte that starts one. The stops may
/// lie within a character: its first byte has been counted, its others never are.
GROAT_INLINE void Places::walk(Stop& stop, std::size_t until) const {
    for (; stop.at < until; ++stop.at) {
        auto const byte = static_cast<unsigned char>(text_[stop.at]);
        if (byte == '\n') {
            ++stop.line;
            stop.column = 1;
        } else if ((byte & 0xC0U) != 0x80U) {
            ++stop.column;
        }
    }
}

GROAT_INLINE std::pair<std::uint32_t, std::uint32_t> Places::at(std::size_t at) const {
    std::size_t const until = std::min(at, text_.size());
    Stop stop = stops_[std::min(until / stride, stops_.size() - 1)];
    walk(stop, until);
    return {stop.line, stop.column};
}

namespace text_check_detail {

GROAT_INLINE bool looks_like_utf16(std::string_view text) {
    if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) return true;
    // Without a mark: every other byte of the first few is NUL, since keys are mostly ASCII.
    std::size_t const few = std::min<std::size_t>(text.size() & ~std::size_t{1}, 16);
    std::size_t even = 0;
    std::size_t odd = 0;
    for (std::size_t i = 0; i < few; ++i)
        if (text[i] == '\0') ++(i % 2 == 0 ? even : odd);
    return few >= 4 && ((even == few / 2 && odd == 0) || (odd == few / 2 && even == 0));
}

inline bool is_control(char32_t code) {
    return (code < 0x20 && code != '\n' && code != '\t') ||
           (code >= 0x7F && code < 0xA0 && code != 0x85);
}

} // namespace text_check_detail

GROAT_INLINE bool is_readable_text(Sources const& sources, std::uint32_t file, Diagnostics& found) {
    std::string_view const text = sources.text(file);
    Span const whole{file};
    auto const refuse_file = [&](Code code, std::string what, char const* help) {
        found.error(whole, code, std::move(what), help);
        return false;
    };
    if (text.size() > most_bytes)
        return refuse_file("file-too-large", "the file is larger than 16 MiB",
                           "spread it over several files, or check whether it is the right one");
    if (text_check_detail::looks_like_utf16(text))
        return refuse_file("not-utf-8", "the file is UTF-16 text", "save it as UTF-8");
    if (std::size_t const nul = text.find('\0'); nul != std::string_view::npos)
        return refuse_file("not-text", fmt::format("the file is not text: byte {} is NUL", nul + 1),
                           "these files are written with a text editor and saved as UTF-8");
    for (std::size_t at = 0; at < text.size();) {
        auto const byte = static_cast<unsigned char>(text[at]);
        bool const is_line_end = byte == '\r' && at + 1 < text.size() && text[at + 1] == '\n';
        if ((byte >= 0x20 && byte < 0x7F) || byte == '\n' || is_line_end) {
            ++at;
            continue;
        }
        Character const next = character_at(text, at);
        auto const place = [&] {
            auto const [line, column] = Places(text).at(at);
            return Span{file, line, column, 1};
        };
        if (!next.is_valid) {
            found.error(place(), "not-utf-8",
                        fmt::format("the file is not UTF-8 text: byte {} is {:#04x}", at + 1, byte),
                        "save it as UTF-8 (in some editors: 'Unicode')");
            return false;
        }
        if (byte == '\r') {
            found.error(place(), "bad-line-end", "a line ends in CR alone",
                        "save the file with line ends of LF or CR LF");
            return false;
        }
        if (text_check_detail::is_control(next.code)) {
            found.error(place(), "not-text",
                        fmt::format("a control character (U+{:04X}) stands here",
                                    static_cast<std::uint32_t>(next.code)),
                        "delete it, or retype the line");
            return false;
        }
        at += next.length;
    }
    return true;
}

} // namespace groat
