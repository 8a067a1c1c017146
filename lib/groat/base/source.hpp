/// Where something was written: every object of the model keeps the `Span` it came from, and `Sources`
/// keeps the texts, so that any later finding can show the very line to its user.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// A stretch of one line of one file. Lines and columns count from 1, columns in characters.
/// `file` counts from 1 in `Sources`; 0 means that nobody wrote it in a file.
struct Span {
    std::uint32_t file = 0;
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    std::uint32_t length = 0;

    [[nodiscard]] bool is_known() const { return file != 0; }
    friend auto operator<=>(Span const&, Span const&) = default;
};

/// The names and texts of all files read.
class Sources {
public:
    /// Keeps a text; its number is what `Span::file` holds.
    std::uint32_t add(std::string name, std::string text);

    [[nodiscard]] std::string_view name(std::uint32_t file) const;
    [[nodiscard]] std::string_view text(std::uint32_t file) const;
    /// The line without its end; empty where there is no such line.
    [[nodiscard]] std::string_view line(std::uint32_t file, std::uint32_t line) const;

private:
    struct Source {
        std::string name;
        std::string text;
        std::vector<std::size_t> line_starts;
    };
    std::vector<Source> sources_;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/base/source.ipp>
#endif
