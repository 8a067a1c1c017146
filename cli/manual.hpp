/// The pages of the manual, put into the program from cli/manual/*.md by cmake/manual.cmake: there is one text of them.
#pragma once

#include <string_view>
#include <vector>

namespace groat::cli {

struct ManualPage {
    std::string_view topic; ///< the name of its file, without `.md`
    std::vector<std::string_view>
        parts; ///< its Markdown, cut between lines: compilers limit a literal
};

/// In the order in which they are to be listed.
[[nodiscard]] std::vector<ManualPage> manual_pages();

} // namespace groat::cli
