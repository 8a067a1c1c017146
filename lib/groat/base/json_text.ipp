#pragma once

#include <groat/base/json_text.hpp>

#include <groat/base/linkage.hpp>

namespace groat::json_text {

GROAT_INLINE std::string in_quotes(std::string_view text) {
    std::string result = "\"";
    for (char const c : text) {
        if (c == '"' || c == '\\') result += '\\';
        result += c;
    }
    return result + '"';
}

GROAT_INLINE std::string joined(std::vector<std::string> const& parts, std::string_view between) {
    std::string result;
    for (std::string const& part : parts) {
        if (!result.empty()) result += between;
        result += part;
    }
    return result;
}

GROAT_INLINE std::string list_of(std::vector<std::string> const& parts) {
    return "[" + joined(parts, ", ") + "]";
}

GROAT_INLINE std::string enumeration(std::span<std::string_view const> words) {
    std::vector<std::string> parts;
    for (std::string_view const word : words) parts.push_back(in_quotes(word));
    return "{\"enum\": " + list_of(parts) + "}";
}

} // namespace groat::json_text
