/// The worksheet of a quote: every figure behind it.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/plan/costed_and_paid.hpp>

namespace groat {

/// For whoever makes it: costs by category per piece, sale unit and order, losses, what each price earns,
/// and what everything was calculated from; with `way`, how what its goods were costed at becomes what their packs
/// cost.
[[nodiscard]] Sheet maker_quote_sheet(Quote const& quote, Costing const& costing,
                                      std::optional<CostedAndPaid> const& way = {});

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/quote_sheet.ipp>
#endif
