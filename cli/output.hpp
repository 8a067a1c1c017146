/// Getting texts out of the program whole: to standard output, or to a file or folder that is written completely
/// or not at all.
#pragma once

#include <groat/base/text.hpp>

#include <string>
#include <vector>

namespace groat::cli {

/// To standard error.
void complain(std::string const& text);

/// Empty when it worked, else what went wrong. A file is written beside its place under another name and
/// moved there at the end; one that exists is left alone unless `may_replace`.
[[nodiscard]] std::string deliver(std::string const& text, std::string const& file,
                                  bool may_replace);

/// A file in a folder of sheets: its path within, and all that stands in it.
struct File {
    std::string path;
    std::string text;
};

/// The files as a folder, and beside them `contents.txt`: the heading, then what POSIX `cksum` prints of each. Empty when
/// it worked, else what went wrong. It is written beside its place and moved there at the end. A folder that
/// exists is left alone unless `may_replace`, and unless all that is in it was written so before, under the
/// same heading, and not changed since.
[[nodiscard]] std::string deliver_folder(std::vector<File> const& files, std::string const& folder,
                                         std::string const& heading, bool may_replace);

} // namespace groat::cli
