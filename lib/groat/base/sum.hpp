/// Exact sums of many terms. A sum of fractions grows with every new denominator, so that adding one after another
/// to it calculates with long numbers nearly all the time; adding in pairs, and pairs of pairs, does so only
/// at the end. The result is the same.
#pragma once

#include <cstddef>
#include <span>

namespace groat {

/// `of(terms[0]) + of(terms[1]) + ...`, in pairs; a default `of` where there are none.
template <class Term, class Of>
[[nodiscard]] auto sum_in_pairs(std::span<Term const> terms, Of const& of)
    -> decltype(of(terms.front()));

// ---------------------------------------------------------------------------------------------------

template <class Term, class Of>
auto sum_in_pairs(std::span<Term const> terms, Of const& of) -> decltype(of(terms.front())) {
    if (terms.empty()) return {};
    if (terms.size() == 1) return of(terms.front());
    std::size_t const half = terms.size() / 2;
    auto sum = sum_in_pairs(terms.first(half), of);
    sum += sum_in_pairs(terms.subspan(half), of);
    return sum;
}

} // namespace groat
