#include "session.hpp"

#include <groat/desk/check.hpp>

namespace groat::cli {

namespace {

/// "samples/bakery: 3 suppliers, 12 offers: no errors, 1 warning"
std::string last_line(Options const& options, desk::OpenBooks const& books) {
    auto const all = [](std::size_t count, std::string_view one, std::string const& many) {
        return count > 0 ? desk::counted(count, one, many) : "no " + many;
    };
    return fmt::format("{}: {}: {}, {}\n", printable(options.books),
                       desk::counts_in_words(books.book()),
                       all(books.found.errors(), "error", "errors"),
                       all(books.found.warnings(), "warning", "warnings"));
}

} // namespace

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
        text += last_line(options, books) + desk::accepted_in_words(books.found);
    if (!options.as.empty() && options.as != "text")
        text = desk::drawn(desk::check_sheet(books.book(), books.found, books.sources), options.as);
    int const handed = put_out(text, options.out, options.may_replace);
    return handed == done ? result : handed;
}

} // namespace groat::cli
