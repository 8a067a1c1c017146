/// What a supplier's new price list brings, for the maker, before it goes into the books.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/review/price_change.hpp>

#include <string>
#include <vector>

namespace groat {

/// A row of the file that became no offer.
struct RowLeftOut {
    std::uint32_t line = 0;
    std::string code;
    std::string name;
    std::string price; ///< as written
};

/// All that is told of an import.
struct ImportReport {
    std::string file;
    std::string supplier;
    std::optional<Date> from = {}; ///< since when the new prices hold, or when it was bought
    Date date = {};                ///< the old ones are those of this day
    std::vector<Offer> listed = {};
    std::vector<PriceChange> changes = {};
    std::vector<RowLeftOut> unmatched = {};
    std::size_t rows = 0;
    std::size_t ignored = 0;
    bool is_receipt = false; ///< what was paid, held against the supplier's list
};

/// Dearer, cheaper, in another pack, new, gone and unchanged, each with its old and new price and the change
/// in percent; then the rows that nothing in the map stands for. `sources` say where an old offer stands.
[[nodiscard]] Sheet import_sheet(ImportReport const& report, Book const& book,
                                 Sources const& sources);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/import_sheet.ipp>
#endif
