/// Before a file is read as YAML: is it text at all? What is not is refused with the reason and, where
/// there is one, the place. What passes is UTF-8 without control characters, in lines that end in LF or
/// CR LF, and of a bounded size.
#pragma once

#include <groat/base/diagnostic.hpp>

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace groat {

/// The most bytes that a file may have: 16 MiB, some three hundred thousand offers.
inline constexpr std::size_t most_bytes = std::size_t{16} * 1024 * 1024;

/// The mark that some editors put in front of UTF-8 text.
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Whether a file is text that can be read; if not, the first reason is among `found`.
/// Takes time in proportion to the size.
[[nodiscard]] bool is_readable_text(Sources const& sources, std::uint32_t file, Diagnostics& found);

/// Lines and columns of a text by byte. Made once in one pass; an answer then costs a walk over at most
/// 128 bytes, wherever it lies, so that a file of one long line is no slower than another.
class Places {
public:
    explicit Places(std::string_view text);

    /// The line and column (in characters, from 1) of the character at byte `at`; for a byte behind the
    /// text, the end of the text.
    [[nodiscard]] std::pair<std::uint32_t, std::uint32_t> at(std::size_t at) const;

private:
    struct Stop {
        std::size_t at;
        std::uint32_t line;
        std::uint32_t column;
    };
    static constexpr std::size_t stride = 128;
    void walk(Stop& stop, std::size_t until) const;
    std::string_view text_;
    std::vector<Stop> stops_;
};

namespace text_check_detail {

bool looks_like_utf16(std::string_view text);

} // namespace text_check_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/yaml/text_check.ipp>
#endif
