/// An order costed, priced and added up: what the client is asked for, and what it earns.
#pragma once

#include <groat/price/quoted.hpp>

#include <optional>
#include <vector>

namespace groat {

/// Costs and prices an order.
///
/// Fails    with every finding that stands in the way: formulas that cannot be costed, targets out of
///          reach, a discount above the amount. `found` also receives the warnings of what is used:
///          stale prices, a tier dearer than a smaller one, more that would cost less, a line that loses money.
[[nodiscard]] std::optional<Quote> quote(Costing const& costing, Order const& order,
                                         Diagnostics& found);

/// The same where it is made together with other orders, whatever the books say of that. `companions` are
/// orders of the same book, without `order`.
[[nodiscard]] std::optional<Quote> quote(Costing const& costing, Order const& order,
                                         std::vector<Order const*> companions, Diagnostics& found);

/// The orders that the books say are made together with one.
[[nodiscard]] std::vector<Order const*> companions_of(Order const& order, Book const& book);

/// The day whose prices hold for an order: its own, or the latest of those that are made together.
[[nodiscard]] std::optional<Date> pricing_date(Order const& order,
                                               std::vector<Order const*> const& companions);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/quote.ipp>
#endif
