/// Names are matched exactly; when one is missed, the nearest is suggested.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>

namespace groat {

/// The candidate that a person most likely meant by `missed`: the one with the fewest typing slips
/// (letters changed, left out, put in or swapped with a neighbour; case and `_` or `-` for a blank
/// count as no slip), if they are few for its length. Ties go to the earlier candidate.
/// Example  `nearest_name("plane flour", {"bread flour", "plain flour"})`  ->  "plain flour"
template <class Names>
[[nodiscard]] std::optional<std::string> nearest_name(std::string_view missed,
                                                      Names const& candidates);

namespace name_detail {

/// By characters, since a letter with an accent is one slip however many bytes it takes.
std::u32string folded(std::string_view name);

/// Optimal string alignment distance.
std::size_t slips(std::u32string_view a, std::u32string_view b);

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

#ifndef GROAT_COMPILED
#include <groat/base/name.ipp>
#endif
