/// The production sheet: what is made, in which order, what is weighed for each mix, what goes into which
/// oven, whose labour it takes, what is taken from the store and what is packed.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/plan/buying.hpp>
#include <groat/plan/production.hpp>

namespace groat {

/// For the bench. Weights are in grams as a scale shows them; no money stands on it.
/// With `buying`, the packs are those that are bought for the same orders; else those of the offers that costs
/// go by.
[[nodiscard]] Sheet make_sheet(Production const& plan, Costing const& costing,
                               Buying const* buying = nullptr);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/make_sheet.ipp>
#endif
