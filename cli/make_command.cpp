#include "session.hpp"

#include <groat/desk/lookup.hpp>
#include <groat/sheets/make_sheet.hpp>

namespace groat::cli {

int make(Options const& options) {
    auto const work = [&](desk::OpenBooks& books, desk::Dates const& dates) -> Result<Sheet> {
        auto const orders = desk::find_orders(books.book(), options.subjects);
        if (!orders) return Refused(orders.error());
        Costing const costing(books.to_cost(), desk::day_of_making(dates, *orders));
        auto const plan = produce(costing, *orders, books.found);
        if (!plan) return desk::as_found();
        return make_sheet(*plan, costing);
    };
    return with_books(options, {BookPart::stock}, work);
}

} // namespace groat::cli
