#pragma once

#include <groat/desk/open_books.hpp>

#include <groat/base/linkage.hpp>
#include <groat/model/sound_part.hpp>

#include <algorithm>
#include <utility>

namespace groat::desk {

GROAT_INLINE OpenBooks open_books(Loaded loaded, Sources sources, Looks looks) {
    OpenBooks books{std::move(sources), {}, {}, std::move(loaded.diagnostics)};
    books.found.judge(loaded.book.shop.judgement);
    books.errors_read = books.found.errors_met();
    books.is_unreadable = loaded.unreadable;
    if (looks == Looks::at_sound_part || books.is_sound())
        books.linked = sound_part(std::move(loaded.book));
    if (!books.linked) books.unlinked = std::move(loaded.book);
    return books;
}

GROAT_INLINE bool is_in_doubt(Book const& book, std::vector<BookPart> const& parts) {
    return book.doubts.any(BookPart::shop) ||
           std::any_of(parts.begin(), parts.end(),
                       [&](BookPart part) { return book.doubts.any(part); });
}

} // namespace groat::desk
