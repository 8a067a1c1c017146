#include "session.hpp"

#include <groat/desk/compare.hpp>
#include <groat/sheets/compare_sheet.hpp>

namespace groat::cli {

int compare(Options const& options) {
    desk::CompareWish const wish{options.subjects, options.all, options.by_orders, options.amount};
    std::vector<BookPart> parts;
    if (wish.all) parts = {BookPart::ingredients, BookPart::prices};
    if (wish.by_orders) parts.push_back(BookPart::orders);
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        Date const date = desk::day_of(dates);
        auto const all = desk::comparisons_wished(books.to_cost(), date, wish, books.found);
        if (!all) return Refused(all.error());
        return compare_sheet(*all, books.book(), date);
    };
    return with_books(options, parts, work);
}

} // namespace groat::cli
