#include "session.hpp"

#include <groat/books/file_text.hpp>
#include <groat/desk/import.hpp>

namespace groat::cli {

int import_prices(Options const& options) {
    auto const on = date_said("--on", options.on);
    if (!on) return refuse_words(on.error());
    // A file that is not there is said before the books are read, and its bytes are not held yet.
    auto map_text = text_of_file(options.map, most_bytes);
    if (!map_text) return refuse_words(map_text.error(), file_trouble);
    if (auto const there = text_of_file(options.subject, 0); !there)
        return refuse_words(there.error(), file_trouble);
    Session session(options);
    desk::OpenBooks& books = session.books();
    if (desk::is_in_doubt(books.book(), {BookPart::ingredients, BookPart::prices}))
        return session.give_up("imported");
    books.is_unreadable = false; // in nothing that is used here
    auto map = desk::import_map_of({options.map, *std::move(map_text)}, books);
    if (!map) return session.give_up("imported");
    if (!map->from) map->from = on->value_or(today());
    auto text = text_of_file(options.subject, most_csv_bytes);
    if (!text) return refuse_words(text.error(), file_trouble);
    auto const imported = desk::import_csv(*map, {options.subject, *std::move(text)},
                                           on->value_or(*map->from), books);
    if (!imported) return session.give_up("imported");
    if (!books.found.empty()) complain(render(books.found, books.sources) + "\n");
    if (!options.out.empty())
        if (int const code = put_out(imported->document, options.out, options.may_replace))
            return code;
    return put_out(desk::drawn(imported->changes, options.as), {}, false);
}

} // namespace groat::cli
