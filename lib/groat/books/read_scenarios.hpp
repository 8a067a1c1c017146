/// scenarios.yaml: changes of the books to try together.
///
///     scenario: a dear winter
///     changes: [butter +20 %, wage of baker 28.00]
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/scenario.hpp>

namespace groat {

/// The scenario of a document; without a name where it states none, which is reported.
[[nodiscard]] Scenario read_scenario(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_scenarios.ipp>
#endif
