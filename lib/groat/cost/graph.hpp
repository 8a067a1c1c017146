/// The order in which formulas depend on one another.
#pragma once

#include <groat/model/book.hpp>

#include <map>
#include <vector>

namespace groat {

/// All formulas of the book, each after those that it uses. Costs run up along it; demand runs down
/// against it. Formulas on or above a cycle are left out.
struct FormulaOrder {
    std::vector<std::size_t> sequence;
    std::vector<std::size_t> position;            ///< by formula: in `sequence`, or `unresolved`
    Diagnostics cycles;                           ///< each cycle once, with the way round
    std::map<std::size_t, Diagnostics> cycles_of; ///< the same, by a formula that stands on it
};

/// Works without recursion: a chain of formulas may be of any length.
[[nodiscard]] FormulaOrder formula_order(Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/graph.ipp>
#endif
