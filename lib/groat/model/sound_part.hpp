/// The part of the books that no error touches, so that a slip in one file does not keep everybody from their
/// sheets. A figure is never made of anything in doubt: what an error stands in is taken out of the book, and
/// so is all that uses it, however far up. What is left is linked and free of errors.
#pragma once

#include <groat/model/linked_book.hpp>

#include <optional>

namespace groat {

/// Takes all out of a linked book that is in doubt, and notes its name among `book.doubts`:
///
///     everything       where an error stands in the shop: `BookPart::shop` is noted, nothing is taken out
///     an ingredient    with an error, with an offer or a purchase that has one, or with a yield of a test that has one
///     all ingredients  where the rest of a price list or receipt is in doubt: what is lost may have been any
///     a formula        with an error, or that uses an ingredient, a supply or a formula in doubt
///     an order, a menu with an error, or that names a formula in doubt; and orders made together with it
///     the stock        with any error in it
///
/// What is asked for and no longer there is to be looked up among the doubts. A sheet that looks at all of a
/// part (what other orders take, what is in stock) is in doubt where anything in that part is.
///
/// Example  plum has an offer whose price cannot be read  ->  plum, plum cream, and the sandwich made with it
///          go, and so does the order for sandwiches; the order for lemon tarts stays
void keep_sound_part(Book& book);

/// The same as a book to cost by: names are resolved anew, and what is in doubt is taken out. `book` is moved from
/// where there is one.
/// Fails    (nothing) where an error stands in the shop, on which everything rests; `book` then stays
[[nodiscard]] std::optional<LinkedBook> sound_part(Book&& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/sound_part.ipp>
#endif
