/// ingredients.yaml and supplies.yaml: what is bought, by name.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/ingredient.hpp>

#include <vector>

namespace groat {

/// The entries of a document, each a name with its facts; a name with nothing behind it has none.
/// An entry with errors is still an ingredient, so that what uses it does not seem to be unknown.
[[nodiscard]] std::vector<Ingredient> read_ingredients(Node const& node, Ingredient::Kind kind,
                                                       Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_ingredients.ipp>
#endif
