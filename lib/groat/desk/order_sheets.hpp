/// All sheets of an order as the files of a folder, each for whom it is:
///
///     client/       the quote
///     labels/       a label for each item and way it is sold
///     maker/        the worksheet, what to make, what to buy
///     suppliers/    an order to each supplier bought from
///
/// Only what lies in `maker/` tells what the maker pays. Nothing is written here.
#pragma once

#include <groat/desk/day.hpp>
#include <groat/model/linked_book.hpp>
#include <groat/paper/sheet.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

/// A sheet, and the file of the folder that it goes into.
struct SheetFile {
    std::string path; ///< within the folder, without an ending; no two differ in capitals alone
    Sheet sheet;
};

/// The files of an order. The order is priced on its own day where none is said; what to buy is at the prices of the
/// day said, or today's.
///
/// An item without a weight gets no label, which is a warning.
/// Fails    (the reasons are among `found`) where one of the sheets cannot be calculated: then there is none at all
/// Example  order 2026-041 of boxes of one item  ->  client/quote-2026-041, labels/rye-plum-sandwich-box-of-6,
///          maker/worksheet-2026-041, maker/to-make, maker/to-buy, suppliers/the-mill
[[nodiscard]] std::optional<std::vector<SheetFile>> order_sheets(LinkedBook const& linked,
                                                                 Order const& order,
                                                                 Dates const& dates,
                                                                 Diagnostics& found);

/// Words as the name of a file on any system: of ASCII, what is no letter nor digit becomes one '-'. At most 100 bytes.
/// Example  "Rye-plum sandwich, box of 12"  ->  "rye-plum-sandwich-box-of-12"
[[nodiscard]] std::string file_name(std::string_view words);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/order_sheets.ipp>
#endif
