#pragma once

#include <groat/yaml/csv.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace groat {

namespace csv_encoding_detail {

/// The bytes 0x80 to 0x9F; 0 where there is none.
/// Source  Unicode Consortium, MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT
inline constexpr char32_t windows_1252[32] = {
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

inline void put(std::string& text, char32_t code) {
    auto const add = [&](char32_t byte) {
        text += static_cast<char>(static_cast<unsigned char>(byte));
    };
    if (code < 0x80) return add(code);
    if (code < 0x800) {
        add(0xC0U | (code >> 6U));
    } else {
        add(0xE0U | (code >> 12U));
        add(0x80U | ((code >> 6U) & 0x3FU));
    }
    add(0x80U | (code & 0x3FU));
}

struct Decoded {
    std::string text;
    std::optional<std::size_t> bad_at = {}; ///< in `text`, the first byte without a meaning
    unsigned bad_byte = 0;
};

inline Decoded decoded(std::string_view bytes, Encoding encoding) {
    Decoded result;
    result.text.reserve(bytes.size() + bytes.size() / 16);
    for (char const c : bytes) {
        auto const byte = static_cast<unsigned char>(c);
        char32_t code = byte;
        if (byte >= 0x80 && byte < 0xA0)
            code = encoding == Encoding::windows_1252 ? windows_1252[byte - 0x80] : 0;
        if (byte >= 0x80 && code == 0) {
            if (!result.bad_at) {
                result.bad_at = result.text.size();
                result.bad_byte = byte;
            }
            code = 0xFFFD;
        }
        put(result.text, code);
    }
    return result;
}

/// Where the first byte stands that is not UTF-8.
inline std::optional<std::size_t> bad_utf_8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        if (static_cast<unsigned char>(text[at]) < 0x80) {
            ++at;
            continue;
        }
        Character const next = character_at(text, at);
        if (!next.is_valid) return at;
        at += next.length;
    }
    return std::nullopt;
}

} // namespace csv_encoding_detail

GROAT_INLINE std::optional<std::uint32_t> add_csv(Sources& sources, std::string name,
                                                  std::string bytes, Encoding encoding,
                                                  Diagnostics& found) {
    auto const refuse_whole = [&](Code code, std::string what, char const* help) {
        found.error(Span{sources.add(std::move(name), {})}, code, std::move(what), help);
        return std::nullopt;
    };
    constexpr auto too_large = "take the columns and rows out that are not needed";
    if (bytes.size() > most_csv_bytes)
        return refuse_whole("file-too-large", "the file is larger than 64 MiB", too_large);
    if (text_check_detail::looks_like_utf16(bytes))
        return refuse_whole("not-utf-8", "the file is UTF-16 text", "save it as UTF-8");
    if (static_cast<std::size_t>(std::count(bytes.begin(), bytes.end(), '\n')) > most_csv_lines)
        return refuse_whole("file-too-large",
                            fmt::format("the file has more than {} lines", most_csv_lines),
                            too_large);
    bool const is_marked = bytes.starts_with(byte_order_mark);
    auto const word = encoding_words[static_cast<std::size_t>(encoding)];
    if (is_marked && encoding != Encoding::utf_8)
        return refuse_whole("wrong-encoding",
                            fmt::format("the file is marked as UTF-8, and the map says {}", word),
                            "take 'encoding' out of the map");
    if (is_marked) bytes.erase(0, byte_order_mark.size());
    std::optional<std::size_t> bad;
    unsigned byte = 0;
    if (encoding == Encoding::utf_8) {
        bad = csv_encoding_detail::bad_utf_8(bytes);
        if (bad) byte = static_cast<unsigned char>(bytes[*bad]);
    } else {
        csv_encoding_detail::Decoded decoded = csv_encoding_detail::decoded(bytes, encoding);
        bytes = std::move(decoded.text);
        bad = decoded.bad_at;
        byte = decoded.bad_byte;
    }
    std::uint32_t const file = sources.add(std::move(name), std::move(bytes));
    std::string_view const text = sources.text(file);
    auto const complain = [&](std::size_t at, Code code, std::string what, char const* help) {
        auto const [line, column] = Places(text).at(at);
        found.error(Span{file, line, column, 1}, code, std::move(what), help);
    };
    if (bad) {
        complain(*bad, encoding == Encoding::utf_8 ? Code("not-utf-8") : Code("wrong-encoding"),
                 fmt::format("the byte {:#04x} means nothing in {}", byte, word),
                 encoding == Encoding::windows_1252
                     ? "say in the map which encoding the file has, or save it as UTF-8"
                     : "write 'encoding: windows-1252' into the map if that is what the supplier "
                       "sends, or save the file as UTF-8");
        return std::nullopt;
    }
    if (std::size_t const nul = text.find('\0'); nul != std::string_view::npos) {
        complain(nul, "not-text", "the file is not text: a NUL byte stands here",
                 "check whether it is the right file, and that it was saved as CSV");
        return std::nullopt;
    }
    return file;
}

GROAT_INLINE CsvReader::CsvReader(Sources const& sources, std::uint32_t file, std::string delimiter,
                                  std::size_t skip, Diagnostics& found)
    : text_(sources.text(file)),
      file_(file),
      delimiter_(std::move(delimiter)),
      places_(text_),
      found_(found) {
    for (; skip > 0 && at_ < text_.size(); --skip)
        at_ = std::min(text_.find('\n', at_), text_.size() - 1) + 1;
}

GROAT_INLINE bool CsvReader::next(CsvRow& row) {
    row.cells.clear();
    row.at = at_;
    if (has_stopped_ || at_ >= text_.size()) return false;
    if (std::size_t const length = line_end(); length > 0) {
        at_ += length;
        return true;
    }
    while (true) {
        if (row.cells.size() == most_csv_cells)
            return stop(at_, "row-too-long",
                        fmt::format("a row of more than {} cells", most_csv_cells),
                        "check the delimiter in the map");
        CsvCell& cell = row.cells.emplace_back();
        cell.at = at_;
        bool const is_quoted = at_ < text_.size() && text_[at_] == '"';
        if (!(is_quoted ? take_quoted(cell) : take_plain(cell))) return false;
        cell.end = at_;
        if (at_ < text_.size() && is_delimiter_next()) {
            at_ += delimiter_.size();
            continue;
        }
        at_ += line_end();
        return true;
    }
}

/// The length of a line end that stands next, or 0.
GROAT_INLINE std::size_t CsvReader::line_end() const {
    std::string_view const rest = text_.substr(at_);
    return rest.starts_with('\n') ? 1 : rest.starts_with("\r\n") ? 2 : 0;
}

GROAT_INLINE bool CsvReader::stop_at_old_line_end() {
    return stop(at_, "bad-line-end", "a line ends in CR alone",
                "save the file with line ends of LF or CR LF");
}

GROAT_INLINE bool CsvReader::take_quoted(CsvCell& cell) {
    std::size_t from = at_ + 1;
    while (true) {
        std::size_t const close = text_.find('"', from);
        if (close == std::string_view::npos)
            return stop(at_, "unclosed-quote", "this quotation mark is not closed",
                        "close it; a quotation mark within quotation marks is written twice");
        cell.text += text_.substr(from, close - from);
        from = close + 1;
        if (!text_.substr(from).starts_with('"')) break;
        cell.text += '"';
        ++from;
    }
    at_ = from;
    if (at_ == text_.size() || is_delimiter_next() || line_end() > 0) return true;
    if (text_[at_] == '\r') return stop_at_old_line_end();
    return stop(at_, "text-behind-quote", "text stands behind the end of a quoted cell",
                "a quotation mark within quotation marks is written twice; check the "
                "delimiter in the map");
}

GROAT_INLINE bool CsvReader::take_plain(CsvCell& cell) {
    std::size_t const from = at_;
    char const stops[] = {delimiter_.front(), '\n', '\r'};
    while (true) {
        at_ = std::min(text_.find_first_of(std::string_view(stops, 3), at_), text_.size());
        if (at_ == text_.size() || is_delimiter_next() || line_end() > 0) break;
        if (text_[at_] == '\r') return stop_at_old_line_end();
        ++at_; // a byte that the delimiter only begins with
    }
    cell.text = text_.substr(from, at_ - from);
    return true;
}

GROAT_INLINE Span CsvReader::span(std::size_t at, std::size_t end) const {
    auto const [line, column] = places_.at(at);
    std::string_view const part = text_.substr(at, end - at);
    std::size_t const length = character_count(part.substr(0, part.find_first_of("\r\n")));
    return {file_, line, column, static_cast<std::uint32_t>(std::max<std::size_t>(length, 1))};
}

GROAT_INLINE Span CsvReader::place_of(CsvCell const& cell) const { return span(cell.at, cell.end); }

GROAT_INLINE Span CsvReader::place_of(CsvRow const& row) const {
    return span(row.at, row.cells.empty() ? row.at : row.cells.back().end);
}

GROAT_INLINE bool CsvReader::stop(std::size_t at, Code code, std::string what, char const* help) {
    has_stopped_ = true;
    found_.error(span(at, std::min(at + 1, text_.size())), code, std::move(what), help);
    return false;
}

} // namespace groat
