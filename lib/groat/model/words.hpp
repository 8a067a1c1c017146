/// The words on the sheets that leave the house, in the shop's language: those shipped (see word_table.hpp), and
/// over them the shop's own, of words.yaml.
#pragma once

#include <groat/base/fill.hpp>
#include <groat/measure/style.hpp>
#include <groat/model/allergen.hpp>
#include <groat/model/word_table.hpp>

#include <algorithm>
#include <map>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// A key of the table. One that is not there does not compile.
class WordKey {
public:
    template <std::size_t N>
    consteval WordKey(char const (&key)[N]) // NOLINT: a literal reads as what it names
        : index_(find_word(std::string_view(key, N - 1))) {
        if (index_ == word_count) throw std::logic_error("no such word");
    }
    [[nodiscard]] constexpr std::size_t index() const { return index_; }

private:
    std::size_t index_;
};

/// The English text of a key, for sheets that stay in the house.
[[nodiscard]] consteval char const* english_word(WordKey key) {
    return word_table[key.index()].english().data();
}

/// Reads a language tag of BCP 47, where capitals make no difference, as it is commonly written: `DE` as `de`,
/// `pt-br` as `pt-BR`. Whether there is such a language is not known.
/// Source  RFC 5646, 2.1: subtags of 1 to 8 letters and digits, the first of 2 to 8 letters; 2.1.1: all small,
///         but regions of two letters in capitals and scripts of four with one at the front (from memory)
[[nodiscard]] Result<std::string> parse_language(std::string_view text);

class Words {
public:
    /// English.
    Words() = default;
    /// Those of a language as BCP 47 writes it; English where none are shipped for it.
    explicit Words(std::string language);

    [[nodiscard]] static Words const& english();
    /// Puts a text of the shop over the one of a key.
    /// Fails    on a place to fill that the English text does not have, and on one that is left out
    [[nodiscard]] std::optional<Flaw> put(std::size_t index, std::string_view text);
    /// Whether words of a language are shipped, "de" also for "de-AT".
    [[nodiscard]] static bool is_shipped(std::string_view language);

    [[nodiscard]] std::string const& language() const { return language_; }
    /// The same texts of the shop over those of another language.
    [[nodiscard]] Words in(std::string language) const {
        Words words(std::move(language));
        words.own_ = own_;
        return words;
    }
    [[nodiscard]] bool is_english() const { return primary(language_) == "en"; }
    /// Whether words are joined into one: "Weizen" and "Weizenmehl".
    [[nodiscard]] bool joins_words() const { return primary(language_) == "de"; }

    /// The keys that are in another language than the rest: neither shipped nor put.
    [[nodiscard]] std::vector<std::string_view> missing() const;

    [[nodiscard]] std::string_view at(std::size_t index) const;
    /// Example  `words("total")`  ->  "Gesamtbetrag"
    [[nodiscard]] std::string operator()(WordKey key) const { return std::string(at(key.index())); }
    /// Example  `words("deposit", {{"share", "30 %"}})`  ->  "Anzahlung von 30 % bei Bestellung"
    [[nodiscard]] std::string operator()(WordKey key, Filling values) const {
        return filled(at(key.index()), values);
    }
    [[nodiscard]] std::string name_of(Allergen const& allergen) const;
    /// Whether the shop has put a text of its own.
    [[nodiscard]] bool has_own_name_of(Allergen const& allergen) const {
        return own_.count(find_word(allergen.name)) > 0;
    }

    [[nodiscard]] MonthNames months() const;

private:
    static std::string_view primary(std::string_view language) {
        return language.substr(0, language.find('-'));
    }
    /// The place of a language among those that are shipped.
    static std::optional<std::size_t> column_of(std::string_view language) {
        auto const* const found = std::find(std::begin(shipped_languages),
                                            std::end(shipped_languages), primary(language));
        if (found == std::end(shipped_languages)) return std::nullopt;
        return static_cast<std::size_t>(found - std::begin(shipped_languages));
    }
    std::string language_ = "en";
    std::map<std::size_t, std::string> own_;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/words.ipp>
#endif
