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

} // namespace groat::json_text

#ifndef GROAT_COMPILED
#include <groat/base/json_text.ipp>
#endif
