/// yields.yaml, yields/*.yaml: yield tests, and how an ingredient or an offer cites them.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/yield_test.hpp>

#include <optional>

namespace groat {

/// The yield test of a document; without a name where the document gives none.
[[nodiscard]] YieldTest read_yield_test(Node const& node, Reading const& reading);

/// `yield:` of an ingredient or an offer: a percentage, `tested`, or `{test: NAME}`. What is cited has no
/// yield yet: `link` finds it.
[[nodiscard]] std::optional<Yield> read_yield(Node const* node, YieldSource& source,
                                              Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_yields.ipp>
#endif
