/// A sheet as Markdown, with tables as most readers of it know them.
#pragma once

#include <groat/paper/sheet.hpp>

#include <string>

namespace groat {

/// The title as a heading, sections as smaller ones, facts and tables as tables. Text from outside is escaped:
/// it can make neither markup nor HTML.
[[nodiscard]] std::string to_markdown(Sheet const& sheet);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/markdown.ipp>
#endif
