#pragma once

#include <groat/desk/folder_list.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

#include <cstddef>
#include <iterator>
#include <utility>

namespace groat::desk {

GROAT_INLINE std::uint32_t checksum(std::string_view text) {
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

GROAT_INLINE std::string list_entry(std::string_view path, std::string_view text) {
    return fmt::format("{} {} {}", checksum(text), text.size(), path);
}

GROAT_INLINE std::optional<FolderList> FolderList::read(std::string_view text,
                                                        std::string_view heading) {
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
