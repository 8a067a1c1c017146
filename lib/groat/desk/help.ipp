#pragma once

#include <groat/desk/help.hpp>

#include <groat/base/codes.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/books/shape_text.hpp>
#include <groat/paper/sheet_text.hpp>
#include <groat/sheets/shape_sheets.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

namespace groat::desk {

namespace help_detail {

/// A kind of word, beside the topics of the manual.
struct Source {
    std::string_view what;
    std::string_view example;
    /// What to print for a word; nothing where the source does not know it.
    std::optional<std::string> (*find)(std::string_view word);
    /// Every word that it knows.
    std::vector<std::string> (*words)();
};

/// As it stands in the table, or in brackets behind a finding.
inline std::optional<std::string> on_code(std::string_view word) {
    if (word.starts_with('[') && word.ends_with(']')) word = word.substr(1, word.size() - 2);
    auto const code = Code::find(word);
    if (!code) return std::nullopt;
    CodeEntry const& entry = code->entry();
    bool const is_error = entry.severity == Severity::error;
    std::string text =
        fmt::format("{}: {}\n\n  why it matters   {}\n  how to mend it   {}\n", entry.code,
                    is_error ? "an error" : "a warning", entry.why, entry.mend);
    if (!is_error)
        text += fmt::format("\nIf all is well as it is, say why in shop.yaml: accept: {{{}: 'the "
                            "reason'}}\n",
                            entry.code);
    return text;
}

inline std::optional<std::string> on_member(std::string_view word) {
    std::string text = help_on_member(sheet_shape_list, word);
    if (text.empty()) return std::nullopt;
    return text;
}

inline std::vector<std::string> members() { return known_members(sheet_shape_list); }

inline constexpr std::array<Source, 3> sources = {
    {{"a key of the books", "portion", help_on_key, known_keys},
     {"a finding", "loss-not-as-seen", on_code, Code::all},
     {"a figure of a sheet", "prime_cost", on_member, members}}};

inline std::string text_of(ManualPage const& page) {
    std::string text;
    for (std::string_view const part : page.parts) text += part;
    return text;
}

/// What stands below the heading up to the first blank line: the question that the page answers.
inline std::string question_of(ManualPage const& page) {
    std::string const text = text_of(page);
    std::size_t const begin = std::min(text.find("\n\n"), text.size() - 2) + 2;
    return printable(text.substr(begin, text.find("\n\n", begin) - begin));
}

/// The topics, one below the other.
inline std::string list_of(std::vector<ManualPage> const& manual) {
    std::string text;
    for (ManualPage const& page : manual) {
        std::string_view name = page.topic;
        for (std::string const& line : wrapped(question_of(page), 80 - 18)) {
            text += fmt::format("  {:<16}{}\n", name, line);
            name = "";
        }
    }
    return text;
}

} // namespace help_detail

GROAT_INLINE std::string help_overview(std::vector<ManualPage> const& manual) {
    std::string text = "groat help TOPIC prints a page of the manual:\n\n" +
                       help_detail::list_of(manual) + "\nOther words can be asked as well:\n\n" +
                       "  a command               groat help quote\n";
    for (help_detail::Source const& source : help_detail::sources)
        text += fmt::format("  {:<24}groat help {}\n", source.what, source.example);
    return text;
}

GROAT_INLINE Result<std::string> help_on(std::string_view word,
                                         std::vector<ManualPage> const& manual) {
    std::vector<std::string> known;
    for (ManualPage const& page : manual) {
        if (page.topic == word) return help_detail::text_of(page);
        known.emplace_back(page.topic);
    }
    std::string text;
    for (help_detail::Source const& source : help_detail::sources) {
        if (auto const found = source.find(word)) text += (text.empty() ? "" : "\n") + *found;
        for (std::string& each : source.words()) known.push_back(std::move(each));
    }
    if (!text.empty()) return text;
    auto const near = nearest_name(word, known);
    return Refused(Flaw{{},
                        fmt::format("there is no help on '{}'", shortened(word, 40)),
                        near ? fmt::format("did you mean '{}'?", *near)
                             : "groat help lists what can be asked"});
}

} // namespace groat::desk
