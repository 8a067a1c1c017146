/// `logo` and the colours of `sheets:` in shop.yaml.
#pragma once

#include <groat/model/sheet_rule.hpp>
#include <groat/yaml/read_common.hpp>

namespace groat {

/// Reads its fields from those of `sheets:`.
inline void read_look(Fields&, SheetRule&, Reading const&) {}

} // namespace groat
