/// What is in an item that a client must know: allergens and how to keep it, gathered from all formulas and
/// ingredients that it is made of; and whether something in it needs more cold than is said.
#pragma once

#include <groat/model/book.hpp>

#include <optional>

namespace groat {

struct Contents {
    AllergenSet allergens;
    Keeping keeping;
};

/// Allergens are those that the books state, no more. How to keep it is what the formula itself states;
/// where it states nothing, the strictest of what the formulas in it state.
[[nodiscard]] Contents contents_of(Book const& book, std::size_t formula);

/// Something kept cold that reaches an item without being baked.
struct ColdPart {
    std::size_t ingredient = 0;
    std::size_t formula = 0; ///< in whose lines it stands
};

/// The first such part of an item that is not itself kept cold. A formula is baked that has an oven of its own;
/// what is in it was baked with it. What is eaten on the day it is made, and not said to be kept anywhere, is
/// served rather than kept: a coffee with milk.
/// Source  FDA Food Code 2022, 3-501.16(A)(2): food that needs the cold for safety is held at 5 °C (41 °F) or below
[[nodiscard]] std::optional<ColdPart> cold_inside(Book const& book, std::size_t formula);

/// A warning for an item of which `cold_inside` is true: at the item where that says how to keep it, else at the
/// formula that the cold part goes into.
void warn_of_cold_inside(Book const& book, std::size_t formula, Diagnostics& found);
/// The same for everything that is sold or goes into nothing else.
[[nodiscard]] Diagnostics cold_findings(Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/contents.ipp>
#endif
