/// What the sales of a menu say: which items sell and earn, where each stands among the others, and what has to
/// be sold before it pays.
#pragma once

#include <groat/price/menu_planes.hpp>
#include <groat/sheets/figures.hpp>

#include <string>

namespace groat {

/// The mix of each category or of the whole menu, its plane, what one usually does about each group, and
/// break-even (always of the whole menu) where fixed costs are stated. For a menu of which something was sold.
void add_menu_mix(Sheet& sheet, MenuCost const& cost, MixOver over, Figures const& figures);

namespace menu_sheet_detail {

/// The item of a line with its number: "7. Lemon tart".
std::string numbered(MenuCost const& cost, std::size_t i);

} // namespace menu_sheet_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/menu_mix_sections.ipp>
#endif
