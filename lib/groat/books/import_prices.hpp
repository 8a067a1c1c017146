/// A supplier's CSV, read by a map (see import_map.hpp), as a price list of the books, or as a receipt. Every row
/// becomes an offer or a purchase, is listed as unmatched, or was declared as one to ignore; none is lost. A price or pack of ours
/// that is not plainly one is an error at its cell: a wrong price is worse than none. A cell is data
/// whatever it looks like: what a spreadsheet would take for a formula is never calculated.
#pragma once

#include <groat/books/import_map.hpp>
#include <groat/books/read_prices.hpp>

#include <string>
#include <vector>

namespace groat {

/// A row that stands for nothing in the map.
struct UnmatchedRow {
    Span where;
    std::string code;
    std::string name;
    std::string price; ///< as written
};

struct ImportedPrices {
    PriceList list = {};
    Receipt receipt = {}; ///< where the map says that it is one; the list is empty then
    std::vector<UnmatchedRow> unmatched = {};
    std::size_t rows = 0; ///< with anything in them, without the header
    std::size_t ignored = 0;
};

/// The price list or receipt that `file` of `sources` is under a linked map; `map.from` dates it.
///
/// Fails    (the reasons are among `reading.found`) where the file is not CSV, a column is not there, a row of
///          an item has too many or too few cells or a price or pack that is none, and where two rows state
///          different prices of the same pack. Reading ends after 200 errors.
[[nodiscard]] ImportedPrices import_prices(ImportMap const& map, Sources const& sources,
                                           std::uint32_t file, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/import_prices.ipp>
#endif
