/// All sheets as one JSON Schema, written from their shapes: what `--as json` prints is held against it.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <span>
#include <string>

namespace groat {

/// A definition for each sheet, with a line for each member, chosen by the kind and the audience.
/// Source  JSON Schema, draft 2020-12
[[nodiscard]] std::string schema_of(std::span<SheetShape const* const> sheets);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/sheet_schema.ipp>
#endif
