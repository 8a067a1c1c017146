/// Where something was written: every object of the model keeps the `Span` it came from, and `Sources`
/// keeps the texts, so that any later finding can show the very line to its user.
#pragma once

#include <groat/base/text.hpp>

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
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

// ---------------------------------------------------------------------------------------------------

inline std::uint32_t Sources::add(std::string name, std::string text) {
    Source source{std::move(name), std::move(text), {0}};
    for (std::size_t at = 0; (at = source.text.find('\n', at)) != std::string::npos; ++at)
        source.line_starts.push_back(at + 1);
    sources_.push_back(std::move(source));
    return static_cast<std::uint32_t>(sources_.size());
}

inline std::string_view Sources::name(std::uint32_t file) const {
    return file == 0 || file > sources_.size() ? std::string_view{} : sources_[file - 1].name;
}

inline std::string_view Sources::text(std::uint32_t file) const {
    return file == 0 || file > sources_.size() ? std::string_view{} : sources_[file - 1].text;
}

inline std::string_view Sources::line(std::uint32_t file, std::uint32_t line) const {
    if (file == 0 || file > sources_.size() || line == 0) return {};
    Source const& source = sources_[file - 1];
    if (line > source.line_starts.size()) return {};
    std::size_t const start = source.line_starts[line - 1];
    std::size_t const end = std::min(source.text.find('\n', start), source.text.size());
    std::string_view text = std::string_view(source.text).substr(start, end - start);
    if (text.ends_with('\r')) text.remove_suffix(1);
    return text;
}

} // namespace groat
