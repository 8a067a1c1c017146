/// Which prices of a menu to raise, and what each of them does.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/price/reprice.hpp>

namespace groat {

[[nodiscard]] Sheet reprice_sheet(Repricing const& repricing, MenuCost const& cost,
                                  Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/reprice_sheet.ipp>
#endif
