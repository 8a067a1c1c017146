#include "session.hpp"

#include <groat/desk/quotes.hpp>

namespace groat::cli {

int quote(Options const& options) {
    desk::QuoteWish const wish{options.subjects, options.audience == "maker",
                               !options.with.empty()};
    if (auto const dates = dates_said(options); dates && wish.has_packs && !wish.is_for_maker)
        return refuse_words({{}, "what packs cost is not for the client", "add --for maker"});
    std::vector<BookPart> parts;
    if (wish.has_packs) parts = {BookPart::orders, BookPart::stock};
    return with_books(options, parts, [&](desk::OpenBooks& books, desk::Dates const& dates) {
        return desk::quote_sheets(books.to_cost(), dates, wish, books.found);
    });
}

} // namespace groat::cli
