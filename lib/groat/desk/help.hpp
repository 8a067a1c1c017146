/// What a word means: a page of the manual, a key of the books, the code of a finding, a figure of a sheet. Each kind of
/// word has a source, and a word is looked up in all of them.
#pragma once

#include <groat/base/result.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

/// A page of the manual. The program that has the pages brings them.
struct ManualPage {
    std::string_view topic; ///< what it is asked for by
    std::vector<std::string_view>
        parts; ///< its Markdown, cut between lines: compilers limit a literal
};

/// What can be asked: the pages, in their order and each with the question that it answers; then the other kinds of
/// words, each with an example.
[[nodiscard]] std::string help_overview(std::vector<ManualPage> const& manual);

/// All that is known of a word. A page of the manual says all there is to say of its topic.
/// Fails    where nobody knows it, with the word that is most like it
/// Example  "portion"  ->  what may stand behind that key, with an example
[[nodiscard]] Result<std::string> help_on(std::string_view word,
                                          std::vector<ManualPage> const& manual);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/help.ipp>
#endif
