/// The list that lies in a folder of sheets: a heading, and a line for each file as POSIX `cksum` prints it. By it a folder
/// is known again, and whether all that is in it is as it was written, so that nobody's own work is written over.
#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace groat::desk {

/// The name of the list in its folder.
inline constexpr std::string_view list_name = "contents.txt";

/// The checksum that POSIX `cksum` gives of a text.
/// Source  POSIX.1-2017, cksum
[[nodiscard]] std::uint32_t checksum(std::string_view text);

/// The line of a file.
/// Example  "123456789" in client/quote.txt  ->  "930766865 9 client/quote.txt"
[[nodiscard]] std::string list_entry(std::string_view path, std::string_view text);

/// What a list says.
class FolderList {
public:
    /// Reads a list. One under another heading, or none, says nothing of any file.
    /// Fails    where there is a line under the heading that is none of a list: somebody has changed it
    [[nodiscard]] static std::optional<FolderList> read(std::string_view text,
                                                        std::string_view heading);

    /// Whether it speaks of this file, is it itself, or is the folder that one lies in.
    [[nodiscard]] bool names(std::string const& path) const { return paths_.contains(path); }
    /// Whether a file is as it was written.
    [[nodiscard]] bool holds(std::string_view path, std::string_view text) const {
        return entries_.contains(list_entry(path, text));
    }

private:
    std::set<std::string> paths_;
    std::set<std::string> entries_;
};

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/folder_list.ipp>
#endif
