/// What an order costs alone, made together with others, and as part of a usual run, side by side.
#pragma once

#include <groat/price/quoted.hpp>
#include <groat/sheets/figures.hpp>

namespace groat {

/// Each line of a quote in each way of costing, with the price that it would take, and the one that was used.
[[nodiscard]] Table ways_table(Quote const& quote, Book const& book, Figures const& figures);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/ways_table.ipp>
#endif
