/// Names into indices: every reference in a book resolved once, and what stands for nothing reported.
#pragma once

#include <groat/model/linked_book.hpp>

#include <optional>

namespace groat {

/// Resolves every name in the book to an index and reports names that stand for nothing, with the nearest
/// that does; names given twice; supplies used as food and food used as supplies. What an error stands in is
/// marked as in doubt.
///
/// To be called after the book was filled, and anew when anything was put in or taken out.
[[nodiscard]] Diagnostics link(Book& book);

/// The book to cost by, which is handed over. What is found in its names is added to `found`, where it is not
/// among them yet.
///
/// Fails    (nothing) when an error is among `found` afterwards, or when one was met as the book was read: cost its
///          sound part then (sound_part.hpp)
/// Example  Diagnostics found;
///          if (auto const book = link(std::move(written), found)) Costing const costing(*book, day);
[[nodiscard]] std::optional<LinkedBook> link(Book book, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/link.ipp>
#endif
