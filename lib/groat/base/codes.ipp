#pragma once

#include <groat/base/codes.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>

namespace groat {

namespace codes_detail {

template <std::size_t N> constexpr bool is_in_order(CodeEntry const (&table)[N]) {
    for (std::size_t i = 1; i < N; ++i)
        if (!(table[i - 1].code < table[i].code)) return false;
    return true;
}
static_assert(is_in_order(codes_of_text) && is_in_order(codes_of_books) &&
              is_in_order(codes_of_work));

} // namespace codes_detail

GROAT_INLINE std::vector<std::string> Code::all() {
    std::vector<std::string> codes;
    for (CodeEntry const& each : codes_of_text) codes.emplace_back(each.code);
    for (CodeEntry const& each : codes_of_books) codes.emplace_back(each.code);
    for (CodeEntry const& each : codes_of_work) codes.emplace_back(each.code);
    std::sort(codes.begin(), codes.end());
    return codes;
}

} // namespace groat
