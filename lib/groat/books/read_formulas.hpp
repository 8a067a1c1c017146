/// formulas/*.yaml: what goes in, what is lost, what it takes, and how it is sold.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/formula.hpp>

namespace groat {

/// The formula of a document; without a name where the document gives none. What cannot be read is
/// reported and left out, so the formula is of use only while nothing was.
[[nodiscard]] Formula read_formula(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_formulas.ipp>
#endif
