#include "session.hpp"

#include <groat/desk/review.hpp>
#include <groat/sheets/yield_sheet.hpp>

namespace groat::cli {

int yields(Options const& options) {
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        Date const date = desk::day_of(dates);
        auto const all = desk::yields_wished(books.book(), date, options.subjects, books.found);
        if (!all) return Refused(all.error());
        return yield_sheet(*all, books.book(), date);
    };
    return with_books(options, {BookPart::yields}, work);
}

} // namespace groat::cli
