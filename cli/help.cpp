#include "help.hpp"

#include <groat/base/name.hpp>

#include <fmt/format.h>

#include <array>

namespace groat::cli {

namespace {

std::array<HelpSource, 4> help_sources() {
    return {help_on_topics(), help_on_keys(), help_on_codes(), help_on_members()};
}

} // namespace

std::string help_overview() {
    std::string text = "groat help TOPIC prints a page of the manual:\n\n" + list_of_topics() +
                       "\nOther words can be asked as well:\n\n" +
                       "  a command               groat help quote\n";
    struct Example {
        HelpSource source;
        std::string_view word;
    };
    for (auto const& [source, word] :
         {Example{help_on_keys(), "portion"}, Example{help_on_codes(), "loss-not-as-seen"},
          Example{help_on_members(), "prime_cost"}})
        if (source.find(word)) text += fmt::format("  {:<24}groat help {}\n", source.what, word);
    return text;
}

std::string help_on(std::string_view word) {
    if (auto page = help_on_topics().find(word)) return *page; // which says all there is to say
    std::string text;
    for (HelpSource const& source : help_sources())
        if (auto const found = source.find(word)) text += (text.empty() ? "" : "\n") + *found;
    return text;
}

std::optional<std::string> nearest_help(std::string_view word) {
    std::vector<std::string> words;
    for (HelpSource const& source : help_sources())
        for (std::string& each : source.words()) words.push_back(std::move(each));
    return nearest_name(word, words);
}

} // namespace groat::cli
