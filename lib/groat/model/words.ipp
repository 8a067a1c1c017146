#pragma once

#include <groat/model/words.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE Result<std::string> parse_language(std::string_view text) {
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

GROAT_INLINE Words::Words(std::string language) : language_(std::move(language)) {}

GROAT_INLINE Words const& Words::english() {
    static Words const words;
    return words;
}

GROAT_INLINE bool Words::is_shipped(std::string_view language) {
    return column_of(language).has_value();
}

GROAT_INLINE std::optional<Flaw> Words::put(std::size_t index, std::string_view text) {
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

GROAT_INLINE std::vector<std::string_view> Words::missing() const {
    std::vector<std::string_view> keys;
    if (is_shipped(language_)) return keys;
    for (std::size_t i = 0; i < word_count; ++i)
        if (own_.count(i) == 0) keys.push_back(word_table[i].key);
    return keys;
}

GROAT_INLINE std::string_view Words::at(std::size_t index) const {
    if (auto const own = own_.find(index); own != own_.end()) return own->second;
    return word_table[index].texts[column_of(language_).value_or(0)];
}

GROAT_INLINE std::string Words::name_of(Allergen const& allergen) const {
    std::size_t const index = find_word(allergen.name);
    return index == word_count ? std::string(allergen.name) : std::string(at(index));
}

GROAT_INLINE MonthNames Words::months() const {
    MonthNames names;
    std::size_t const january = WordKey("january").index();
    for (std::size_t i = 0; i < names.size(); ++i) names[i] = at(january + i);
    return names;
}

} // namespace groat
