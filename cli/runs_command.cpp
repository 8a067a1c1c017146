#include "session.hpp"

#include <groat/desk/review.hpp>
#include <groat/sheets/runs_sheet.hpp>

namespace groat::cli {

int runs(Options const& options) {
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        if (!options.order.empty())
            return desk::variance_sheet(books.to_cost(), dates, options.order, books.found);
        Costing const costing(books.to_cost(), desk::day_of(dates));
        auto const all = desk::losses_wished(costing, options.subjects, books.found);
        if (!all) return Refused(all.error());
        return run_losses_sheet(*all, costing);
    };
    return with_books(options, {BookPart::runs}, work);
}

} // namespace groat::cli
