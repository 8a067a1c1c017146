#pragma once

#include <groat/books/read_runs.hpp>

#include <groat/base/linkage.hpp>
#include <groat/books/read_common.hpp>

#include <optional>
#include <string_view>
#include <utility>

namespace groat {

namespace read_runs_detail {

inline void read_pieces(Node const& node, Run& run, Reading const& reading) {
    Fields<shapes::pieces> fields(node, reading.found);
    fields.read_into(run, reading);
    if (run.portioned && run.good && *run.good > *run.portioned)
        reading.found.add({Severity::error,
                           "more-good-than-made",
                           fmt::format("{} good pieces cannot come from {}", run.good->str(),
                                       run.portioned->str()),
                           fields.place_of("good"),
                           {{"so many were portioned", fields.place_of("portioned")}},
                           "count again: 'portioned' is what went onto the tray"});
    fields.close();
}

} // namespace read_runs_detail

GROAT_INLINE bool read_value(UsedFood& used, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    if (!node.is_mapping()) return read_value(used.amount, node, key, reading);
    Fields<shapes::used> fields(node, reading.found);
    std::size_t const errors = reading.found.errors_met();
    fields.read_into(used, reading);
    bool const is_read = reading.found.errors_met() == errors && fields.at("amount") != nullptr;
    if (is_read && used.amount.amount.is_zero() && used.paid && !used.paid->is_zero())
        reading.found.error(fields.place_of("paid"), "paid-for-nothing",
                            fmt::format("something was paid for no '{}' at all", used.item.name),
                            "'paid' is what the amount used has cost; take it out");
    fields.close();
    return true;
}

GROAT_INLINE bool read_value(WorkedTime& worked, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    return read_short<&WorkedTime::minutes>(worked, node, key, reading);
}

GROAT_INLINE Run read_run(Node const& node, Reading const& reading) {
    Fields<shapes::run> fields(node, reading.found);
    Run run;
    run.origin = fields.origin("run");
    fields.read_into(run, reading);
    if (Node const* const pieces = fields.at("pieces"))
        read_runs_detail::read_pieces(*pieces, run, reading);
    fields.close();
    return run;
}

} // namespace groat
