/// What an order really cost against the books, for the maker.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/review/variance.hpp>

namespace groat {

/// Where the difference between an order's cost and the books comes from.
[[nodiscard]] Sheet order_variance_sheet(OrderVariance const& variance, Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/variance_sheet.ipp>
#endif
