#include "session.hpp"

#include <groat/desk/check.hpp>

namespace groat::cli {

int check(Options const& options) {
    auto const dates = dates_said(options);
    if (!dates) return refuse_words(dates.error());
    Session session(options, desk::Looks::at_all);
    desk::OpenBooks& books = session.books();
    if (books.is_sound()) desk::check(books.to_cost(), *dates, books.found);
    int result = books.found.has_errors() ? books_have_errors : done;
    if (books.is_unreadable) result = file_trouble;
    std::string text = render(books.found, books.sources);
    if (!text.empty()) text += '\n';
    if (!books.is_unreadable)
        text += printable(options.books) + ": " +
                desk::summary_in_words(books.book(), books.found) + "\n" +
                desk::accepted_in_words(books.found);
    if (!options.as.empty() && options.as != "text")
        text = desk::drawn(desk::check_sheet(books.book(), books.found, books.sources), options.as);
    int const handed = put_out(text, options.out, options.may_replace);
    return handed == done ? result : handed;
}

} // namespace groat::cli
