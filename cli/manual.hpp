/// The pages of the manual, put into the program from cli/manual/*.md by cmake/manual.cmake: there is one text of them.
#pragma once

#include <groat/desk/help.hpp>

#include <vector>

namespace groat::cli {

/// In the order in which they are to be listed.
[[nodiscard]] std::vector<desk::ManualPage> manual_pages();

} // namespace groat::cli
