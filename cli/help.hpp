/// What `groat help WORD` can explain: each kind of word has a source, and a word is looked up in all of them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat::cli {

struct HelpSource {
    std::string_view what; ///< the kind of word: "a topic of the manual"
    /// What to print for a word; nothing where the source does not know it.
    std::optional<std::string> (*find)(std::string_view word);
    /// Every word that it knows.
    std::vector<std::string> (*words)();
};

[[nodiscard]] HelpSource help_on_topics();  ///< the manual, by task
[[nodiscard]] HelpSource help_on_keys();    ///< keys of the books
[[nodiscard]] HelpSource help_on_codes();   ///< codes of findings
[[nodiscard]] HelpSource help_on_members(); ///< what stands on sheets, for programs

/// The topics of the manual, one below the other, each with the question that it answers.
[[nodiscard]] std::string list_of_topics();

/// What can be asked, each with an example that is answered.
[[nodiscard]] std::string help_overview();
/// All that the sources say of a word; empty where none knows it.
[[nodiscard]] std::string help_on(std::string_view word);
/// The word most like one that nobody knows, where there is one.
[[nodiscard]] std::optional<std::string> nearest_help(std::string_view word);

} // namespace groat::cli
