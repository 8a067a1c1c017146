/// words.yaml: the shop's own words for the sheets that leave the house, or a whole language.
///
///     language: fr
///     words:
///       total: Total
///       valid until: Valable jusqu'au
///       deposit: Acompte de {share} à la commande
#pragma once

#include <array>
#include <groat/books/read_common.hpp>
#include <string_view>

namespace groat::shapes {

inline constexpr auto word_keys = [] {
    std::array<std::string_view, std::size(word_table)> all{};
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = word_table[i].key;
    return all;
}();
inline constexpr KeyShape words_keys[] = {
    {"language", may, a_language, "fr",
     "The language that the words are of, where it does not come with groat."},
    {"words", may, names_to("words that 'groat words' lists", a_text, word_keys), "{total: Total}",
     "The shop's own words, by the word that groat knows them as."},
};
inline constexpr Shape words{"words", "the words", words_keys};
inline constexpr Value some_words = mapping(words);

} // namespace groat::shapes

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
