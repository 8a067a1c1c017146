/// words.yaml: the shop's own words for the sheets that leave the house, or a whole language.
///
///     language: fr
///     words:
///       total: Total
///       valid until: Valable jusqu'au
///       deposit: Acompte de {share} à la commande
#pragma once

#include <groat/books/scalars.hpp>

namespace groat {

/// The words of a document, without a language where none could be read; where none is said they are `undetermined`. Words that are missing from a language
/// that is not shipped stay English, and are a warning where all else is right.
[[nodiscard]] Words read_words(Node const& node, Reading const& reading);

/// The tag of texts that go over those of whatever language the shop says.
/// Source  ISO 639-2, "und"
inline constexpr std::string_view undetermined = "und";

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_words.ipp>
#endif
