/// scenarios.yaml: changes of the books to try together.
///
///     scenario: a dear winter
///     changes: [butter +20 %, wage of baker 28.00]
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/scenario.hpp>
#include <string_view>

namespace groat {

bool read_value(Scenario::Change& change, Node const& node, KeyShape const& key,
                Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape scenario_keys[] = {
    {"scenario", must, to<&Scenario::name>(a_name), "a dear winter", "What it is called."},
    {"changes", must, to<&Scenario::changes>(names), "[butter +20 %]",
     "The changes that are tried together, as 'groat whatif' takes them."},
};
inline constexpr Synonym scenario_synonyms[] = {
    {"name", "scenario"}, {"set", "changes"}, {"with", "changes"}};
inline constexpr Shape scenario{"scenario", "this scenario", scenario_keys, scenario_synonyms};
inline constexpr Value a_scenario = mapping(scenario);

} // namespace groat::shapes

namespace groat {

/// The scenario of a document; without a name where it states none, which is reported.
[[nodiscard]] Scenario read_scenario(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_scenarios.ipp>
#endif
