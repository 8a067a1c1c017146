/// How far a pack may fall short of the weight that it declares.
#pragma once

#include <groat/base/number.hpp>

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

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/shortfall.ipp>
#endif
