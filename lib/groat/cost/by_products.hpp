/// What is cut off a thing and used for something else, where the books say that it is used: its worth comes off
/// what the thing costs. Yield tests say what it is worth, so only a yield that cites them has any.
#pragma once

#include <groat/model/book.hpp>

#include <cstddef>

namespace groat {

/// What the by-products of one gram as purchased are worth, by the tests that the yield in use cites:
/// the offer's own, else the ingredient's. Nothing where they are not said to be used, or the yield is stated.
///
///     sum(worth of the trim) / sum(as purchased), over the tests cited
///
/// Example  12 lb of lamb with 6.10 of kidneys and 6.90 of flank  ->  13.00 / 12 a pound
[[nodiscard]] Money by_product_worth(Book const& book, std::size_t ingredient, Offer const& offer);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/by_products.ipp>
#endif
