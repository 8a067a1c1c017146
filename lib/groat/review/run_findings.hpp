/// What is wrong or odd about the runs of a book, as far as it takes the formulas to see it.
#pragma once

#include <groat/cost/engine.hpp>

namespace groat {

/// Amounts that cannot be turned into grams; runs of an order that do not say what came out; more out than went
/// in, where that cannot be; and losses of the books that are not those seen. Formulas that are not sound are
/// passed over: the costing says why.
[[nodiscard]] Diagnostics run_findings(Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/review/run_findings.ipp>
#endif
