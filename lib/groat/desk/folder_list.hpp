/// The list that lies in a folder of sheets: a heading, and a line for each file as POSIX `cksum` prints it. By it a folder
/// is known again, and whether all that is in it is as it was written, so that nobody's own work is written over.
#pragma once

#include <fmt/format.h>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>

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

// ---------------------------------------------------------------------------------------------------

inline std::uint32_t checksum(std::string_view text) {
    std::uint32_t sum = 0;
    auto const add = [&](std::uint32_t byte) {
        sum ^= byte << 24U;
        for (int bit = 0; bit < 8; ++bit) sum = (sum << 1U) ^ ((sum >> 31U) * 0x04C11DB7U);
    };
    for (char const c : text) add(static_cast<unsigned char>(c));
    for (std::size_t left = text.size(); left > 0; left >>= 8U)
        add(static_cast<std::uint32_t>(left & 0xFFU));
    return ~sum;
}

inline std::string list_entry(std::string_view path, std::string_view text) {
    return fmt::format("{} {} {}", checksum(text), text.size(), path);
}

inline std::optional<FolderList> FolderList::read(std::string_view text, std::string_view heading) {
    FolderList list;
    auto const next = [&] {
        std::size_t const end = text.find('\n');
        std::string line(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        return line;
    };
    if (text.empty() || next() != heading) return list;
    list.paths_.emplace(list_name);
    while (!text.empty()) {
        std::string line = next();
        std::size_t const before_path = line.find(' ', line.find(' ') + 1);
        if (line.find_first_not_of("0123456789 ") <= before_path) return std::nullopt;
        std::string path = line.substr(before_path + 1);
        std::size_t const slash = path.rfind('/');
        if (slash != std::string::npos) list.paths_.insert(path.substr(0, slash));
        list.paths_.insert(std::move(path));
        list.entries_.insert(std::move(line));
    }
    return list;
}

} // namespace groat::desk
