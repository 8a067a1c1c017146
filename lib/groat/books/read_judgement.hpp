/// What shop.yaml says of findings by their codes:
///
///     accept: {loss-not-as-seen: new oven in January}
///     severity: {below-cost: error}
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/books/shape_shop.hpp>

namespace groat {

/// What stands under `accept` and `severity`. Only warnings are accepted, and each with a reason.
[[nodiscard]] Judgement read_judgement(Fields<shapes::shop>& shop, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_judgement.ipp>
#endif
