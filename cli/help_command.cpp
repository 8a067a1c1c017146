#include "help.hpp"
#include "session.hpp"

#include <groat/base/name.hpp>
#include <groat/base/text.hpp>

namespace groat::cli {

int help(Options const& options) {
    std::string const& word = options.subject;
    std::string const text = word.empty() ? help_overview() : help_on(word);
    if (!text.empty()) return put_out(text, options.out, options.may_replace);
    auto const near = nearest_help(word);
    return refuse_words(
        {{},
         fmt::format("there is no help on '{}'", shortened(word, 40)),
         near ? fmt::format("did you mean '{}'?", *near) : "groat help lists what can be asked"});
}

} // namespace groat::cli
