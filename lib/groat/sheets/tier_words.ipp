#pragma once

#include <groat/sheets/tier_words.hpp>

#include <groat/base/linkage.hpp>

#include <utility>

namespace groat::tier_words_detail {

GROAT_INLINE std::string counts(Integer const& from, Integer const& to, Figures const& figures,
                                Words const& words) {
    std::string const first = figures.number(Number(from));
    std::string const last = figures.number(Number(to));
    if (from == to) return first;
    return from + 1 == to ? words("count or count", {{"from", first}, {"to", last}})
                          : words("count to count", {{"from", first}, {"to", last}});
}

GROAT_INLINE std::string about(std::string const& title, bool is_plain, std::string sentence) {
    return is_plain ? std::move(sentence) : title + ": " + sentence;
}

} // namespace groat::tier_words_detail
