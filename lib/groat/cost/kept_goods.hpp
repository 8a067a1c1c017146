/// What is made for the shelf and kept: one gram or piece of it, costed by a run of its own (rollup.hpp), so that
/// whoever takes it pays for it like for an ingredient.
#pragma once

#include <groat/cost/making.hpp>

#include <optional>
#include <vector>

namespace groat {

/// What is kept, for each formula of the book of which the leftover is kept and that can be costed.
[[nodiscard]] std::vector<std::optional<KeptGood>> kept_goods(Book const& book,
                                                              Formulary const& formulary);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/kept_goods.ipp>
#endif
