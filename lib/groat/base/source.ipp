#pragma once

#include <groat/base/source.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>
#include <utility>

namespace groat {

GROAT_INLINE std::uint32_t Sources::add(std::string name, std::string text) {
    Source source{std::move(name), std::move(text), {0}};
    for (std::size_t at = 0; (at = source.text.find('\n', at)) != std::string::npos; ++at)
        source.line_starts.push_back(at + 1);
    sources_.push_back(std::move(source));
    return static_cast<std::uint32_t>(sources_.size());
}

GROAT_INLINE std::string_view Sources::name(std::uint32_t file) const {
    return file == 0 || file > sources_.size() ? std::string_view{} : sources_[file - 1].name;
}

GROAT_INLINE std::string_view Sources::text(std::uint32_t file) const {
    return file == 0 || file > sources_.size() ? std::string_view{} : sources_[file - 1].text;
}

GROAT_INLINE std::string_view Sources::line(std::uint32_t file, std::uint32_t line) const {
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
