/// The parts of a quote's worksheet: its lines and sums, and what discount, tax, cost and drive come to.
#pragma once

#include <groat/price/quoted.hpp>
#include <groat/sheets/shown_costs.hpp>

namespace groat {

namespace quote_sheet_detail {

/// The lines with cost and margin.
Table maker_lines(Quote const& quote, Book const& book, Figures const& figures);

/// What a discount leaves of the margin of each line and of all, with a word where that is too little.
Table discount_table(Quote const& quote, Book const& book);

/// What is taxed at which rate, where there are several.
Table tax_table(QuoteTotals const& totals, Figures const& figures);

/// Revenue and cost as they stand elsewhere; fee and profit are what lies between them.
Table result(Quote const& quote, ShownCosts const& costs, Figures const& figures);

/// The whole order by category, each as a share of its cost.
Table order_costs(ShownCosts const& costs, Figures const& figures);

/// What the drive costs, and how far was counted.
Table delivery_table(Quote const& quote, Shop const& shop, ShownCosts const& costs,
                     Figures const& figures);

} // namespace quote_sheet_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/quote_sections.ipp>
#endif
