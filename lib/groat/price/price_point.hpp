/// The figures on which a shop lets its prices land.
#pragma once

#include <groat/measure/coins.hpp>
#include <groat/model/policy.hpp>

namespace groat {

/// The price point for a wanted price, on the side of tax that the shop shows.
///
/// To a step: the next multiple up, or the nearest one (half up). To endings: the least price not below
/// the wanted one that ends so. Without either: to the minor unit.
/// Throws `std::logic_error` where step or endings are no whole minor units (the readers refuse those).
/// Example  10.31 to 0.25  ->  10.50;  10.31 to endings .50 and .99  ->  10.50;  10.60  ->  10.99
[[nodiscard]] Coins to_price_point(Money const& wanted, PricePoint const& point);

/// The highest price point that is not above `most`; below 0 where none is.
/// Example  10.60 to 0.25  ->  10.50;  10.31 to endings .50 and .99  ->  9.99
[[nodiscard]] Coins price_point_within(Money const& most, PricePoint const& point);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/price_point.ipp>
#endif
