/// A sheet as one page that needs nothing from outside: no script, no font, no picture is fetched. The shop's logo
/// stands in the page itself, as an image, in which no script runs.
#pragma once

#include <groat/paper/sheet.hpp>

#include <string>

namespace groat {

/// A whole document: the letterhead as its header, the title as its one heading of the first rank, each section
/// under a heading of its own, tables with the scope of their heads, charts and bars as pictures with names.
/// What may be too wide for a phone moves in a box of its own, which the keyboard reaches. Text from outside is
/// escaped everywhere.
[[nodiscard]] std::string to_html(Sheet const& sheet);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/html.ipp>
#endif
