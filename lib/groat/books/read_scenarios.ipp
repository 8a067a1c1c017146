#pragma once

#include <groat/books/read_scenarios.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/shape_orders.hpp>

namespace groat {

GROAT_INLINE Scenario read_scenario(Node const& node, Reading const& reading) {
    Fields<shapes::scenario> fields(node, reading.found);
    Scenario scenario;
    scenario.origin = fields.where();
    assign(scenario.name, read_name(fields.at("scenario"), reading));
    for (Node const& each : read_list(fields.at("changes"), "a list of changes", reading))
        if (auto text = read_name(&each, reading))
            scenario.changes.push_back({*std::move(text), each.where});
    fields.close();
    return scenario;
}

} // namespace groat
