/// Books as a verb works with them: their texts, what they say, and what was found in them so far. Errors hold up only
/// what stands on what they are in.
#pragma once

#include <groat/books/load.hpp>
#include <groat/model/linked_book.hpp>

#include <cstddef>
#include <optional>
#include <vector>

namespace groat::desk {

/// Which part of the books is looked at: all that could be read, or what no error touches.
enum class Looks { at_all, at_sound_part };

struct OpenBooks {
    Sources sources = {};
    /// What may be costed: all of the books where no error was met, else their sound part. None where the shop is in
    /// doubt, or where all is looked at and an error was met.
    std::optional<LinkedBook> linked = {};
    Book unlinked = {}; ///< the books where nothing may be costed
    Diagnostics found = {};
    std::size_t errors_read = 0; ///< met in reading the books
    bool is_unreadable = false;  ///< something could not be read from disk, whatever it says

    /// What the books say, as far as it is looked at.
    [[nodiscard]] Book const& book() const& { return linked ? linked->book() : unlinked; }
    /// The books to cost by. Not to be asked for where the shop is in doubt.
    [[nodiscard]] LinkedBook const& to_cost() const& { return linked.value(); }
    /// Whether there is no error but warnings that the shop holds to be errors.
    [[nodiscard]] bool is_sound() const { return found.errors() == found.raised(); }
    /// Whether any error was met since the books were read.
    [[nodiscard]] bool has_new_errors() const { return found.errors_met() > errors_read; }
};

/// Books that were loaded with these sources, and of them the part that is looked at.
/// Example  an order for a tart whose flour has no price that can be read, `at_sound_part`  ->  the book is without
///          the flour, the tart and the order; `found` says why
[[nodiscard]] OpenBooks open_books(Loaded loaded, Sources sources, Looks looks);

/// Whether an error stands in the shop, or anywhere in these parts, of which all is looked at.
/// Example  `is_in_doubt(book, {BookPart::stock})` before buying: what is in stock could be any of it
[[nodiscard]] bool is_in_doubt(Book const& book, std::vector<BookPart> const& parts = {});

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/open_books.ipp>
#endif
