#include "session.hpp"

#include <groat/desk/lookup.hpp>
#include <groat/price/item_cost.hpp>
#include <groat/sheets/cost_sheet.hpp>

namespace groat::cli {

int cost(Options const& options) {
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        auto const wanted = desk::find_item(books.book(), options.subject, options.sale_unit);
        if (!wanted) return Refused(wanted.error());
        Costing const costing(books.to_cost(), desk::day_of(dates));
        auto const item = cost_item(costing, wanted->formula, wanted->unit, books.found);
        if (!item) return desk::as_found();
        return cost_sheet(*item, costing);
    };
    return with_books(options, {}, work);
}

} // namespace groat::cli
