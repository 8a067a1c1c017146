#pragma once

#include <groat/books/read_judgement.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_common.hpp>

#include <fmt/format.h>

#include <optional>

namespace groat {

namespace read_judgement_detail {

inline std::optional<Code> read_code(Key const& key, Reading const& reading) {
    auto const code = Code::find(key.text);
    if (!code) {
        auto const near = nearest_name(key.text, Code::all());
        reading.found.error(key.where, "unknown-code",
                            fmt::format("no finding has the code '{}'", shortened(key.text, 48)),
                            near ? fmt::format("did you mean '{}'?", *near)
                                 : "write it as it stands in brackets behind the finding");
    }
    return code;
}

inline void refuse_error(Key const& key, Code code, Reading const& reading) {
    if (code.entry().severity == Severity::error)
        reading.found.error(key.where, "not-acceptable",
                            fmt::format("'{}' is an error and cannot be accepted", code.text()),
                            fmt::format("'groat help {}' says how to mend it", code.text()));
}

} // namespace read_judgement_detail

GROAT_INLINE Judgement read_judgement(Node const* accept, Node const* severity,
                                      Reading const& reading) {
    namespace parts = read_judgement_detail;
    Judgement judgement;
    each_named(accept, "a mapping of codes and reasons", reading,
               [&](Key const& key, Node const& each) {
                   auto const code = parts::read_code(key, reading);
                   auto reason = read_text(&each, reading);
                   if (!code) return;
                   parts::refuse_error(key, *code, reading);
                   if (reason) judgement.accepted.push_back({*code, std::move(*reason)});
               });
    each_named(severity, "a mapping of codes", reading, [&](Key const& key, Node const& each) {
        auto const code = parts::read_code(key, reading);
        if (!read_word(&each, shapes::severities, reading) || !code) return;
        judgement.held_as_errors.push_back(*code);
        if (judgement.accepts(*code))
            reading.found.error(key.where, "given-twice",
                                fmt::format("'{}' is accepted, and held to be an error", key.text),
                                "keep one of them");
    });
    return judgement;
}

} // namespace groat
