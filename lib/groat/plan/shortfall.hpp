/// How far a pack may fall short of the weight that it declares.
#pragma once

#include <groat/base/rounding.hpp>

#include <optional>

namespace groat {

/// The tolerable negative error of a prepacked quantity, in grams; none below 5 g and above 10 kg.
///
///     5-50 g 9 %, -100 g 4.5 g, -200 g 4.5 %, -300 g 9 g, -500 g 3 %, -1 kg 15 g, -10 kg 1.5 %, up to 0.1 g
///
/// At a limit the ranges on both sides give the same.
/// Source   Directive 76/211/EEC, Annex I, 2.4
/// Example  453 g  ->  13.6 g
[[nodiscard]] std::optional<Number> tolerable_shortfall(Number const& declared_grams);

// ---------------------------------------------------------------------------------------------------

inline std::optional<Number> tolerable_shortfall(Number const& declared) {
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
