/// A menu as the maker looks at it: prices against targets, what each earns and costs, sums by category, and
/// what its sales say (see menu_mix_sections.hpp). Items are numbered as on the menu, the same everywhere.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/price/menu_planes.hpp>

namespace groat {

/// The mix is that of each category, or of the whole menu.
[[nodiscard]] Sheet menu_sheet(MenuCost const& cost, Costing const& costing,
                               MixOver over = MixOver::categories);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/menu_sheet.ipp>
#endif
