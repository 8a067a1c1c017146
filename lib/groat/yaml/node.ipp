#pragma once

#include <groat/yaml/node.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <cstdint>
#include <string_view>

namespace groat {

GROAT_INLINE Span Node::place_of(std::size_t at, std::size_t length) const {
    if (!is_verbatim || length == 0 || at > text.size()) return where;
    std::string_view const all = text;
    Span part = where;
    part.column +=
        static_cast<std::uint32_t>(character_count(all.substr(0, at)) + (is_quoted ? 1 : 0));
    part.length = static_cast<std::uint32_t>(character_count(all.substr(at, length)));
    return part;
}

} // namespace groat
