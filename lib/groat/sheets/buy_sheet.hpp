/// What to buy for orders, for the maker; and the list that goes to one supplier, which says nothing of the
/// others.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/plan/buying_days.hpp>
#include <groat/plan/costed_and_paid.hpp>

#include <vector>

namespace groat {

/// The packs by supplier, what the same would cost otherwise, and what is left over of each; with `days`, when to
/// buy what would spoil; with `way`, how what the orders were costed at becomes what is paid.
[[nodiscard]] Sheet buy_sheet(Buying const& buying, Book const& book,
                              std::vector<BuyingDay> const& days = {},
                              std::optional<CostedAndPaid> const& way = {});

/// One supplier's part, at the prices they list, to be sent to them.
[[nodiscard]] Sheet supplier_order_sheet(Basket const& basket, Date date, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/buy_sheet.ipp>
#endif
