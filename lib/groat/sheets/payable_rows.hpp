/// From the subtotal to the balance, as both sheets of a quote print it.
#pragma once

#include <groat/price/payable.hpp>
#include <groat/sheets/figures.hpp>

#include <vector>

namespace groat::quote_sheet_detail {

bool has_tax(Payable const& totals);

/// From the subtotal to the balance: the rows below the lines of a quote, `cells` columns wide.
std::vector<Row> total_rows(Payable const& totals, Share const& deposit, Sender const& shop,
                            Figures const& figures, Words const& words, std::size_t cells);

} // namespace groat::quote_sheet_detail

#ifndef GROAT_COMPILED
#include <groat/sheets/payable_rows.ipp>
#endif
