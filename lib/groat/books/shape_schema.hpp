/// A kind of book file as a JSON Schema, so that editors complete and check what is typed.
///
/// A schema knows what keys there are and what kind of value each takes. What a value says, and whether names
/// are found, it leaves to `groat check`.
#pragma once

#include <groat/books/shape_files.hpp>

#include <string>

namespace groat {

/// The schema of one document of a file, with a line for each key.
/// Source  JSON Schema, draft 2020-12
[[nodiscard]] std::string schema_of(BookFile const& file);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/shape_schema.ipp>
#endif
