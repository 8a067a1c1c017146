/// What stands on sheets in words, written from their shapes: a page of the manual, and what one member means.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// The page of the manual on what programs read, in Markdown: each sheet with its sections and their members.
[[nodiscard]] std::string manual_of_sheets(std::span<SheetShape const* const> sheets);

/// Where a member or a section of that name stands and what it means there; empty where none is called so.
[[nodiscard]] std::string help_on_member(std::span<SheetShape const* const> sheets,
                                         std::string_view name);

/// All names of members and sections, sorted.
[[nodiscard]] std::vector<std::string> known_members(std::span<SheetShape const* const> sheets);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/sheet_text.ipp>
#endif
