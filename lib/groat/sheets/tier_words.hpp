/// Prices by quantity in words.
#pragma once

#include <groat/sheets/figures.hpp>

#include <string>

namespace groat::tier_words_detail {

/// "2", "2 or 3", "2 to 9"
std::string counts(Integer const& from, Integer const& to, Figures const& figures,
                   Words const& words);

/// "No more is asked for 2 or 3 than for 4: 146.00."
template <class Tier>
std::string cap_words(Tier const& tier, Figures const& figures, Words const& words) {
    return words("no more asked", {{"counts", counts(tier.cap->from, tier.to, figures, words)},
                                   {"more", figures.number(Number(tier.cap->more))},
                                   {"total", figures.amount(tier.cap->total.money())}});
}

/// With the name of what it is about, where that is not plain.
std::string about(std::string const& title, bool is_plain, std::string sentence);

} // namespace groat::tier_words_detail

#ifndef GROAT_COMPILED
#include <groat/sheets/tier_words.ipp>
#endif
