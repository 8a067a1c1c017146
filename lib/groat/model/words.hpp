/// The words on the sheets that leave the house, in the shop's language: those shipped (see word_table.hpp), and
/// over them the shop's own, of words.yaml.
#pragma once

#include <groat/base/fill.hpp>
#include <groat/measure/style.hpp>
#include <groat/model/allergen.hpp>
#include <groat/model/word_table.hpp>

#include <fmt/format.h>

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

// ---------------------------------------------------------------------------------------------------

inline Result<std::string> parse_language(std::string_view text) {
    auto const is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    auto const in_case = [&](char c, bool is_capital) {
        return is_letter(c) ? static_cast<char>(is_capital ? c & ~0x20 : c | 0x20) : c;
    };
    std::string tag(text);
    std::size_t length = 0;
    bool is_first = true;
    bool is_free = false; // behind a subtag of one character all is small
    bool is_good = text.size() <= 35;
    for (std::size_t i = 0; i <= text.size() && is_good; ++i) {
        if (i == text.size() || text[i] == '-') {
            is_good = length >= (is_first ? 2U : 1U) && length <= 8;
            is_free = is_free || length == 1;
            for (std::size_t k = 0; k < length; ++k)
                tag[i - length + k] =
                    in_case(text[i - length + k],
                            !is_first && !is_free && (length == 2 || (length == 4 && k == 0)));
            is_first = false;
            length = 0;
        } else {
            is_good = is_letter(text[i]) || (!is_first && text[i] >= '0' && text[i] <= '9');
            ++length;
        }
    }
    if (is_good) return tag;
    return refuse("bad-language", fmt::format("'{}' is no language tag", shortened(text, 32)),
                  "write the two letters of a language, as en, de or fr; or de-AT", 0, text.size());
}

inline Words::Words(std::string language) : language_(std::move(language)) {}

inline Words const& Words::english() {
    static Words const words;
    return words;
}

inline bool Words::is_shipped(std::string_view language) { return column_of(language).has_value(); }

inline std::optional<Flaw> Words::put(std::size_t index, std::string_view text) {
    WordEntry const& entry = word_table[index];
    std::vector<std::string_view> const wanted = places_in(entry.english());
    std::vector<std::string_view> const given = places_in(text);
    auto const holds = [](auto const& all, std::string_view one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    };
    std::string const help = fmt::format("in English it is '{}'", entry.english());
    for (std::string_view const place : given)
        if (!holds(wanted, place))
            return Flaw{"unknown-place",
                        place.empty() ? fmt::format("a brace in '{}' opens or closes nothing",
                                                    shortened(text, 40))
                                      : fmt::format("'{{{}}}' is no place to fill of '{}'",
                                                    shortened(place, 32), entry.key),
                        help};
    for (std::string_view const place : wanted)
        if (!holds(given, place))
            return Flaw{"missing-place",
                        fmt::format("'{{{}}}' is missing from the text of '{}'", place, entry.key),
                        help};
    own_[index] = text;
    return std::nullopt;
}

inline std::vector<std::string_view> Words::missing() const {
    std::vector<std::string_view> keys;
    if (is_shipped(language_)) return keys;
    for (std::size_t i = 0; i < word_count; ++i)
        if (own_.count(i) == 0) keys.push_back(word_table[i].key);
    return keys;
}

inline std::string_view Words::at(std::size_t index) const {
    if (auto const own = own_.find(index); own != own_.end()) return own->second;
    return word_table[index].texts[column_of(language_).value_or(0)];
}

inline std::string Words::name_of(Allergen const& allergen) const {
    std::size_t const index = find_word(allergen.name);
    return index == word_count ? std::string(allergen.name) : std::string(at(index));
}

inline MonthNames Words::months() const {
    MonthNames names;
    std::size_t const january = WordKey("january").index();
    for (std::size_t i = 0; i < names.size(); ++i) names[i] = at(january + i);
    return names;
}

} // namespace groat
