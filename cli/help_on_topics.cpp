#include "help.hpp"
#include "manual.hpp"

#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace groat::cli {

namespace {

std::string text_of(ManualPage const& page) {
    std::string text;
    for (std::string_view const part : page.parts) text += part;
    return text;
}

/// What stands below the heading up to the first blank line: the question that the page answers.
std::string question_of(ManualPage const& page) {
    std::string const text = text_of(page);
    std::size_t const begin = std::min(text.find("\n\n"), text.size() - 2) + 2;
    return printable(text.substr(begin, text.find("\n\n", begin) - begin));
}

std::optional<std::string> find_topic(std::string_view word) {
    for (ManualPage const& page : manual_pages())
        if (page.topic == word) return text_of(page);
    return std::nullopt;
}

std::vector<std::string> topics() {
    std::vector<std::string> names;
    for (ManualPage const& page : manual_pages()) names.emplace_back(page.topic);
    return names;
}

} // namespace

HelpSource help_on_topics() { return {"a topic of the manual", find_topic, topics}; }

std::string list_of_topics() {
    std::string text;
    for (ManualPage const& page : manual_pages()) {
        std::string_view name = page.topic;
        for (std::string const& line : wrapped(question_of(page), 80 - 18)) {
            text += fmt::format("  {:<16}{}\n", name, line);
            name = "";
        }
    }
    return text;
}

} // namespace groat::cli
