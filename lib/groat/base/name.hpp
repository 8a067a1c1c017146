/// Names are matched exactly; when one is missed, the nearest is suggested.
#pragma once

#include <groat/base/text.hpp>

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// The candidate that a person most likely meant by `missed`: the one with the fewest typing slips
/// (letters changed, left out, put in or swapped with a neighbour; case and `_` or `-` for a blank
/// count as no slip), if they are few for its length. Ties go to the earlier candidate.
/// Example  `nearest_name("plane flour", {"bread flour", "plain flour"})`  ->  "plain flour"
template <class Names>
[[nodiscard]] std::optional<std::string> nearest_name(std::string_view missed,
                                                      Names const& candidates);

// ---------------------------------------------------------------------------------------------------

namespace name_detail {

/// By characters, since a letter with an accent is one slip however many bytes it takes.
inline std::u32string folded(std::string_view name) {
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

/// Optimal string alignment distance.
inline std::size_t slips(std::u32string_view a, std::u32string_view b) {
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

template <class Names>
std::optional<std::string> nearest_name(std::string_view missed, Names const& candidates) {
    constexpr std::size_t longest = 80;
    if (missed.empty() || missed.size() > longest) return std::nullopt;
    std::u32string const wanted = name_detail::folded(missed);
    std::optional<std::string> best;
    std::size_t fewest = std::max<std::size_t>(1, wanted.size() / 3) + 1;
    for (auto const& candidate : candidates) {
        std::string_view const name = candidate;
        if (name.size() > longest) continue;
        std::size_t const count = name_detail::slips(wanted, name_detail::folded(name));
        if (count < fewest) {
            fewest = count;
            best = std::string(name);
        }
    }
    return best;
}

} // namespace groat
