#pragma once

#include <groat/books/read_scenarios.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE bool read_value(Scenario::Change& change, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    change.where = node.where;
    return read_value(change.text, node, key, reading);
}

GROAT_INLINE Scenario read_scenario(Node const& node, Reading const& reading) {
    Fields<shapes::scenario> fields(node, reading.found);
    Scenario scenario;
    scenario.origin = fields.where();
    fields.read_into(scenario, reading);
    fields.close();
    return scenario;
}

} // namespace groat
