#include "commands.hpp"
#include "help.hpp"
#include "output.hpp"

#include <groat/base/name.hpp>

#include <fmt/format.h>

#include <array>

namespace groat::cli {

namespace {

std::array<HelpSource, 3> help_sources() {
    return {help_on_topics(), help_on_keys(), help_on_codes()};
}

/// What can be asked, each with an example that is answered.
std::string help_overview() {
    std::string text = "groat help TOPIC prints a page of the manual:\n\n" + list_of_topics() +
                       "\nOther words can be asked as well:\n\n" +
                       "  a command               groat help quote\n";
    struct Example {
        HelpSource source;
        std::string_view word;
    };
    for (auto const& [source, word] :
         {Example{help_on_keys(), "portion"}, Example{help_on_codes(), "loss-not-as-seen"}})
        if (source.find(word)) text += fmt::format("  {:<24}groat help {}\n", source.what, word);
    return text;
}

/// All that the sources say of a word; empty where none knows it.
std::string help_on(std::string_view word) {
    std::string text;
    for (HelpSource const& source : help_sources())
        if (auto const found = source.find(word)) text += (text.empty() ? "" : "\n") + *found;
    return text;
}

} // namespace

int help(Options const& options) {
    std::string const text = options.subject.empty() ? help_overview() : help_on(options.subject);
    if (!text.empty()) {
        std::string const trouble = deliver(text, options.out, options.may_replace);
        if (trouble.empty()) return done;
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }
    std::vector<std::string> words;
    for (HelpSource const& source : help_sources())
        for (std::string& each : source.words()) words.push_back(std::move(each));
    auto const near = nearest_name(options.subject, words);
    complain(fmt::format(
        "groat: there is no help on '{}'\n  help: {}\n", shortened(options.subject, 40),
        near ? fmt::format("did you mean '{}'?", *near) : "groat help lists what can be asked"));
    return command_line_wrong;
}

} // namespace groat::cli
