/// A key that stands twice in one mapping is an error: YAML readers keep the one or the other, and what was
/// meant is anybody's guess.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/yaml/node.hpp>

namespace groat {

/// How many of the keys that stand twice in one mapping are reported.
inline constexpr std::size_t most_reported = 100;

/// Leaves of each key the first, and reports the others. Its value and the mapping are in doubt then.
void drop_repeated_keys(Node& node, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/yaml/repeated_keys.ipp>
#endif
