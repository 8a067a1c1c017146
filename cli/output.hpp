/// Getting a text out of the program whole: to standard output, or to a file that is written completely or
/// not at all.
#pragma once

#include <string>

namespace groat::cli {

/// To standard error.
void complain(std::string const& text);

/// Empty when it worked, else what went wrong. A file is written beside its place under another name and
/// moved there at the end; one that exists is left alone unless `may_replace`.
[[nodiscard]] std::string deliver(std::string const& text, std::string const& file,
                                  bool may_replace);

} // namespace groat::cli
