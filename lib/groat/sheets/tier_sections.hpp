/// Prices by quantity on the worksheet of a quote: what is asked from a count on, and what that earns where it earns least.
#pragma once

#include <groat/price/quoted.hpp>
#include <groat/sheets/figures.hpp>

namespace groat {

/// The tiers with what they cost and earn at their worst counts, what is to be thought over, and the pictures.
void add_maker_tiers(Sheet& sheet, Quote const& quote, Book const& book, Figures const& figures);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/tier_sections.ipp>
#endif
