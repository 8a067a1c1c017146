/// The keys of the books in words: the tables of the manual, and what `groat help KEY` answers.
#pragma once

#include <groat/books/shape.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// What may stand behind a key.
/// Example  "a count or a mass"; "yes or no"; "one of charged, kept"; "a name, or a list of them"
[[nodiscard]] std::string value_in_words(Value const& value);
/// Whether a key must stand, and what it goes with.
/// Example  "must stand unless 'trays' does; not with 'trays'"
[[nodiscard]] std::string need_in_words(KeyShape const& key);

/// Everything about a key, for each mapping where it may stand; nothing where there is no such key.
[[nodiscard]] std::optional<std::string> help_on_key(std::string_view key);
/// Every key of the books and every word that stands for one, each once.
[[nodiscard]] std::vector<std::string> known_keys();

/// The reference of the books as Markdown.
[[nodiscard]] std::string manual_of_books();

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/shape_text.ipp>
#endif
