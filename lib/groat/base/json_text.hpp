/// Text put together to JSON, for schemas that are written from tables.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace groat::json_text {

/// Text of our own tables, which holds no control characters, as a JSON string.
[[nodiscard]] std::string in_quotes(std::string_view text);
[[nodiscard]] std::string joined(std::vector<std::string> const& parts, std::string_view between);
/// The parts, which are JSON already, as a list.
[[nodiscard]] std::string list_of(std::vector<std::string> const& parts);
/// `{"enum": [...]}` of words.
[[nodiscard]] std::string enumeration(std::span<std::string_view const> words);

// ---------------------------------------------------------------------------------------------------

inline std::string in_quotes(std::string_view text) {
    std::string result = "\"";
    for (char const c : text) {
        if (c == '"' || c == '\\') result += '\\';
        result += c;
    }
    return result + '"';
}

inline std::string joined(std::vector<std::string> const& parts, std::string_view between) {
    std::string result;
    for (std::string const& part : parts) {
        if (!result.empty()) result += between;
        result += part;
    }
    return result;
}

inline std::string list_of(std::vector<std::string> const& parts) {
    return "[" + joined(parts, ", ") + "]";
}

inline std::string enumeration(std::span<std::string_view const> words) {
    std::vector<std::string> parts;
    for (std::string_view const word : words) parts.push_back(in_quotes(word));
    return "{\"enum\": " + list_of(parts) + "}";
}

} // namespace groat::json_text
