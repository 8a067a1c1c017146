#pragma once

#include <groat/base/name.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <utility>
#include <vector>

namespace groat {

namespace name_detail {

GROAT_INLINE std::u32string folded(std::string_view name) {
    std::u32string result;
    for (std::size_t at = 0; at < name.size();) {
        Character const next = character_at(name, at);
        at += next.length;
        if (next.code == U'_' || next.code == U'-')
            result += U' ';
        else
            result += next.code >= U'A' && next.code <= U'Z' ? next.code - U'A' + U'a' : next.code;
    }
    return result;
}

GROAT_INLINE std::size_t slips(std::u32string_view a, std::u32string_view b) {
    std::vector<std::size_t> before(b.size() + 1);
    std::vector<std::size_t> above(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) above[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            std::size_t const change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = std::min(row[j], before[j - 2] + 1);
        }
        std::swap(before, above);
        std::swap(above, row);
    }
    return above[b.size()];
}

} // namespace name_detail

} // namespace groat
