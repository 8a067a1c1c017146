/// Books as a verb works with them: their texts, what they say, and what was found in them so far. Errors hold up only
/// what stands on what they are in.
#pragma once

#include <groat/books/load.hpp>
#include <groat/model/sound_part.hpp>

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace groat::desk {

/// Which part of the books is looked at: all that could be read, or what no error touches.
enum class Looks { at_all, at_sound_part };

struct OpenBooks {
    Sources sources = {};
    Book book = {};
    Diagnostics found = {};
    std::size_t errors_read = 0; ///< met in reading the books
    bool is_unreadable = false;  ///< something could not be read from disk, whatever it says

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

// ---------------------------------------------------------------------------------------------------

inline OpenBooks open_books(Loaded loaded, Sources sources, Looks looks) {
    OpenBooks books{std::move(sources), std::move(loaded.book), std::move(loaded.diagnostics)};
    books.errors_read = books.found.errors_met();
    books.is_unreadable = loaded.unreadable;
    if (looks == Looks::at_sound_part && books.found.has_errors()) keep_sound_part(books.book);
    return books;
}

inline bool is_in_doubt(Book const& book, std::vector<BookPart> const& parts) {
    return book.doubts.any(BookPart::shop) ||
           std::any_of(parts.begin(), parts.end(),
                       [&](BookPart part) { return book.doubts.any(part); });
}

} // namespace groat::desk
