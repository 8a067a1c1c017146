/// What shop.yaml says of findings by their codes:
///
///     accept: {loss-not-as-seen: new oven in January}
///     severity: {below-cost: error}
#pragma once

#include <groat/base/judgement.hpp>
#include <groat/books/read_common.hpp>
#include <string_view>

namespace groat::shapes {

/// What the severity of a finding may be set to.
inline constexpr std::string_view severities[] = {"error"};
inline constexpr Value a_severity = one_of(severities);

} // namespace groat::shapes

namespace groat {

/// What stands under `accept` and `severity`. Only warnings are accepted, and each with a reason.
[[nodiscard]] Judgement read_judgement(Node const* accept, Node const* severity,
                                       Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_judgement.ipp>
#endif
