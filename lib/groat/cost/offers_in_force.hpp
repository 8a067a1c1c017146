/// Which offers of a thing hold on a day, of the lists and of what was paid, and what one of them contains.
#pragma once

#include <groat/model/book.hpp>

#include <vector>

namespace groat {

/// The offers in force on `date`: of each supplier and pack size the newest that has begun and not ended, of
/// list and purchase alike; of one day the purchase. Indices into the book's offers, in their order.
[[nodiscard]] Result<std::vector<std::size_t>> offers_in_force(Book const& book,
                                                               std::size_t ingredient, Date date);

/// The amount in one pack: grams of food, pieces of a supply, as purchased.
/// Fails    where a density or unit weight is missing
[[nodiscard]] Result<Number> content_of(Offer const& offer, Ingredient const& ingredient);

/// The offer's own yield, else the ingredient's, else 100 %.
[[nodiscard]] Yield yield_of(Offer const& offer, Ingredient const& ingredient);

/// Whether an offer is there to compare with and never in a cost. What was really paid is, wherever it was.
[[nodiscard]] bool is_only_compared(Offer const& offer, Book const& book);

/// What a pack costs at the door: its price with the supplier's share for delivery, and freight.
///
///     (price * (1 + delivery / usual order) + freight) / (1 + tax)
///
/// Net of recoverable tax; exact; without the deposit.
/// Example  13.80 with 7.50 of delivery on a usual order of 120.00  ->  14.6625
[[nodiscard]] Money landed_pack_cost(Offer const& offer, Book const& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/offers_in_force.ipp>
#endif
