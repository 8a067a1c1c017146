#include "commands.hpp"
#include "help.hpp"
#include "output.hpp"

#include <groat/base/name.hpp>

#include <fmt/format.h>

namespace groat::cli {

int help(Options const& options) {
    std::string text;
    std::vector<std::string> words;
    for (HelpSource const& source : {help_on_topics(), help_on_keys(), help_on_codes()}) {
        if (auto const found = source.find(options.subject))
            text += (text.empty() ? "" : "\n") + *found;
        for (std::string& each : source.words()) words.push_back(std::move(each));
    }
    if (!text.empty()) {
        std::string const trouble = deliver(text, options.out, options.may_replace);
        if (trouble.empty()) return done;
        complain(fmt::format("groat: {}\n", trouble));
        return file_trouble;
    }
    auto const near = nearest_name(options.subject, words);
    complain(fmt::format(
        "groat: there is no help on '{}'\n  help: {}\n", shortened(options.subject, 40),
        near ? fmt::format("did you mean '{}'?", *near) : "groat --help lists the commands"));
    return command_line_wrong;
}

} // namespace groat::cli
