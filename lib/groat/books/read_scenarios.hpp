/// scenarios.yaml: changes of the books to try together.
///
///     scenario: a dear winter
///     changes: [butter +20 %, wage of baker 28.00]
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/books/shape_orders.hpp>
#include <groat/model/scenario.hpp>

namespace groat {

/// The scenario of a document; without a name where it states none, which is reported.
[[nodiscard]] Scenario read_scenario(Node const& node, Reading const& reading);

// ---------------------------------------------------------------------------------------------------

inline Scenario read_scenario(Node const& node, Reading const& reading) {
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
