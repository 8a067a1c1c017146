#pragma once

#include <groat/plan/shortfall.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

namespace groat {

GROAT_INLINE std::optional<Number> tolerable_shortfall(Number const& declared) {
    struct Range {
        int up_to;
        Number share;
        Number grams;
    };
    static Range const ranges[] = {{50, Number(9) / 100, 0},      {100, 0, Number(9) / 2},
                                   {200, Number(45) / 1000, 0},   {300, 0, 9},
                                   {500, Number(3) / 100, 0},     {1000, 0, 15},
                                   {10'000, Number(15) / 1000, 0}};
    if (declared < 5) return std::nullopt;
    for (Range const& range : ranges)
        if (declared <= range.up_to)
            return round_to(declared * range.share + range.grams, Number(1) / 10, Tie::up);
    return std::nullopt;
}

} // namespace groat
