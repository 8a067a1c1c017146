#pragma once

#include <groat/books/read_words.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_common.hpp>

#include <fmt/ranges.h>

#include <map>
#include <string>
#include <vector>

namespace groat {

namespace read_words_detail {

inline std::vector<std::string_view> all_keys() {
    std::vector<std::string_view> keys;
    for (WordEntry const& entry : word_table) keys.push_back(entry.key);
    return keys;
}

inline void read_entry(Key const& key, Node const& node, Words& words, Reading const& reading) {
    std::size_t const index = find_word(key.text);
    if (index == word_count) {
        auto const near = nearest_name(key.text, all_keys());
        reading.found.error(key.where, "unknown-key",
                            fmt::format("no word is called '{}'", shortened(key.text, 48)),
                            near ? fmt::format("did you mean '{}'?", *near)
                                 : "'groat words' lists all of them");
        return;
    }
    if (!node.is_scalar() && !node.is_null())
        return expected("text", node, reading.found,
                        "put a text that begins with a brace or a bracket into quotation marks");
    auto const text = read_text(&node, reading);
    if (!text) return;
    if (auto const flaw = words.put(index, *text)) reading.found.error(node.where, *flaw);
}

/// Two allergens of one name, or two months, would tell a client what is not so.
inline void warn_of_alike(Words const& words, Span where, Reading const& reading) {
    std::map<std::string, std::string> seen;
    auto const look = [&](std::string const& key, std::string const& text) {
        auto const [other, is_new] = seen.emplace(text, key);
        if (is_new) return;
        reading.found.warn(where, "words-alike",
                           fmt::format("'{}' and '{}' are both called '{}'", other->second, key,
                                       shortened(text, 48)),
                           "give each a text of its own: clients read them");
    };
    for (Allergen const& each : allergens) look(std::string(each.name), words.name_of(each));
    seen.clear();
    MonthNames const months = words.months();
    for (std::size_t i = 0; i < months.size(); ++i)
        look(fmt::format("month {}", i + 1), std::string(months[i]));
}

inline void warn_of_missing(Words const& words, Span where, Reading const& reading) {
    std::vector<std::string_view> missing = words.missing();
    if (missing.empty()) return;
    std::size_t const count = missing.size();
    constexpr std::size_t most = 5;
    bool const is_cut = count > most;
    if (is_cut) missing.resize(most);
    reading.found.warn(where, "words-missing",
                       fmt::format("{} of {} words are missing and stay English: {}{}", count,
                                   word_count, fmt::join(missing, ", "), is_cut ? " ..." : ""),
                       "'groat words' lists all of them");
}

} // namespace read_words_detail

GROAT_INLINE Words read_words(Node const& node, Reading const& reading) {
    std::size_t const errors = reading.found.errors();
    Fields<shapes::words> fields(node, reading.found);
    Node const* const said = fields.at("language");
    Words words(
        said == nullptr
            ? std::string(undetermined)
            : read_scalar(said, "a language", reading, parse_language).value_or(std::string()));
    each_named(fields.at("words"), "a mapping of words", reading,
               [&](Key const& key, Node const& each) {
                   read_words_detail::read_entry(key, each, words, reading);
               });
    fields.close();
    if (reading.found.errors() == errors)
        read_words_detail::warn_of_alike(words, fields.place_of("words"), reading);
    if (said != nullptr && reading.found.errors() == errors)
        read_words_detail::warn_of_missing(words, fields.place_of("language"), reading);
    return words;
}

} // namespace groat
