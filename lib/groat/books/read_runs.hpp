/// runs/*.yaml: what happened in the kitchen, as it was weighed, counted and paid.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/run.hpp>

namespace groat {

/// The run of a document; without a name where the document gives none. More good pieces than were portioned
/// are refused here; what cannot be judged without the formula is left to `run_findings` (review/run_findings.hpp).
[[nodiscard]] Run read_run(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_runs.ipp>
#endif
