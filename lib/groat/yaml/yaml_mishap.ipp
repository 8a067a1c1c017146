#pragma once

#include <groat/yaml/yaml_mishap.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

namespace groat {

namespace yaml_mishap_detail {

struct Entry {
    std::string_view message; ///< how the parser's message begins
    std::string_view what;
    std::string_view help;
    bool is_unclosed = false;
};

inline constexpr std::string_view quote = "put the text into quotation marks";

inline constexpr Entry entries[] = {
    {"end of map not found", "a further 'key: value' was expected here",
     "check the indentation; text with special characters goes into quotation marks"},
    {"end of sequence not found", "a further '- ' was expected here", "check the indentation"},
    {"end of map flow not found", "this '{' is not closed, or a ',' is missing behind it",
     "write {key: value, key: value}", true},
    {"end of sequence flow not found", "this '[' is not closed, or a ',' is missing behind it",
     "write [one, two]", true},
    {"illegal map", "a ':' does not fit here",
     "a key begins in the column of the key above it; text that contains ': ' goes into quotation marks"},
    {"illegal block entry", "a '-' does not fit here",
     "a list begins on a line of its own; text that begins with '- ' goes into quotation marks"},
    {"illegal flow end", "this bracket closes nothing", "remove it, or open it before"},
    {"illegal tab", "a tab indents this line", "indent with blanks"},
    {"illegal document indicator", "a quotation mark above is not closed",
     "close it before the ---"},
    {"illegal EOF", "the file ends within a text", "close the quotation mark"},
    {"unknown token", "no value can begin with this character", quote},
    {"alias not found", "a '*' refers to an anchor, but none is named", quote},
    {"illegal character found while scanning alias", "a '*' refers to an anchor, but none is named",
     quote},
    {"the referenced anchor", "there is no anchor of this name above",
     "text that begins with * goes into quotation marks"},
    {"anchor not found", "a '&' names an anchor, but no name follows", quote},
    {"illegal character found while scanning anchor", "a '&' names an anchor, but no name follows",
     quote},
    {"unknown escape", "the backslash begins no known escape",
     "write two backslashes, or use single quotation marks"},
    {"bad character found while scanning hex", "the backslash begins no known escape",
     "write two backslashes, or use single quotation marks"},
    {"invalid unicode", "the backslash names no character",
     "write two backslashes, or use single quotation marks"},
    {"tag handle", "a '!' begins a tag, which is not read", quote},
    {"illegal character found while scanning tag", "a '!' begins a tag, which is not read", quote},
    {"end of verbatim tag", "a '!' begins a tag, which is not read", quote},
    {"cannot assign multiple tags", "two tags stand in a row", quote},
    {"cannot assign multiple anchors", "two anchors stand in a row", quote},
    {"aliases can't have any content", "nothing may follow a reference", quote},
    {"bad YAML version", "this is no version of YAML", "leave the line out"},
    {"YAML major version", "this version of YAML is not known", "leave the line out"},
    {"bad file", "lists and mappings stand too deep in one another",
     "check the brackets and the indentation"},
};

} // namespace yaml_mishap_detail

GROAT_INLINE YamlMishap yaml_mishap(std::string_view message, bool is_indented_by_tab) {
    if (is_indented_by_tab) return {"a tab indents this line", "indent with blanks"};
    for (auto const& entry : yaml_mishap_detail::entries)
        if (message.starts_with(entry.message))
            return {std::string(entry.what), std::string(entry.help), entry.is_unclosed,
                    entry.what.starts_with("the backslash")};
    return {fmt::format("this cannot be read as YAML ({})", message), {}};
}

} // namespace groat
