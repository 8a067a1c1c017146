/// A sheet as CSV for a spreadsheet: RFC 4180, UTF-8 with its mark, so that every spreadsheet opens it right.
/// Figures are plain numbers with a point and no unit in their cell; the unit stands in the column's title, or
/// in a column of its own where the figures have several.
#pragma once

#include <groat/paper/sheet.hpp>

#include <string>

namespace groat {

/// Letterhead and title, then the sections one after another, an empty row between: facts as label, value and
/// unit; a table with a row of titles where it has any; remarks as a cell each. A text that a spreadsheet would take for a
/// formula (it begins with `=`, `+`, `-` or `@`) gets an apostrophe before it.
[[nodiscard]] std::string to_csv(Sheet const& sheet);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/csv.ipp>
#endif
