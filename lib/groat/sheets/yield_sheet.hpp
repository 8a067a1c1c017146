/// Yield tests, for the maker: what became of what was bought, what a usable kilogram cost, and whether the
/// books agree with what was weighed.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/review/yield_review.hpp>

#include <vector>

namespace groat {

/// For each ingredient its tests, where every gram went, what the tests cost, and the yield in the books at each
/// offer in force on `date`.
[[nodiscard]] Sheet yield_sheet(std::vector<YieldReview> const& reviews, Book const& book,
                                Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/yield_sheet.ipp>
#endif
