/// Points on a plane in text: each a label at its place, and a line across each axis. A point always stands on
/// its true side of both lines, since the parts on either side are scaled apart; a point at a line stands
/// on its upper or right side.
#pragma once

#include <groat/paper/sheet.hpp>

#include <string>
#include <vector>

namespace groat {

/// The plane in lines of at most 80 columns, and below it what could not be shown: labels whose place was
/// taken already by another. A point without a label is a dot, and dots at one place are one dot.
/// Throws `std::logic_error` for a chart that is not to be set in letters.
[[nodiscard]] std::vector<std::string> lettered(Chart const& chart);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/scatter.ipp>
#endif
