/// Texts put into files and folders that are written completely or not at all. Nothing that somebody else has written or
/// changed there is lost.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

/// A file in a folder of sheets: its path within, and all that stands in it.
struct File {
    std::string path;
    std::string text;
};

/// Writes a file beside its place under another name and moves it there at the end; one that exists is left alone unless
/// `may_replace`. Empty when it worked, else what went wrong.
[[nodiscard]] std::string deliver(std::string_view text, std::string const& file, bool may_replace);

/// The files as a folder, and beside them `contents.txt`: the heading, then what POSIX `cksum` prints of each. Empty when
/// it worked, else what went wrong. It is written beside its place and moved there at the end. A folder that
/// exists is left alone unless `may_replace`, and unless all that is in it was written so before, under the
/// same heading, and not changed since.
[[nodiscard]] std::string deliver_folder(std::vector<File> const& files, std::string const& named,
                                         std::string const& heading, bool may_replace);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/deliver.ipp>
#endif
