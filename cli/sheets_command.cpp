#include "session.hpp"

#include <groat/base/text.hpp>
#include <groat/desk/lookup.hpp>
#include <groat/desk/order_sheets.hpp>

namespace groat::cli {

int sheets(Options const& said) {
    Options options = said;
    if (options.as.empty()) options.as = "html";
    auto const dates = dates_said(options);
    if (!dates) return refuse_words(dates.error());
    Session session(options);
    if (desk::is_in_doubt(session.book(), {BookPart::orders, BookPart::stock}))
        return session.give_up();
    auto const order = desk::find_order(session.book(), options.subject);
    if (!order) return session.refuse(order.error());
    auto const sheets =
        desk::order_sheets(session.books().to_cost(), **order, *dates, session.found());
    if (!sheets) return session.give_up();
    std::string const& id = (*order)->id;
    return session.hand_over(desk::files_of(*sheets, options.as),
                             options.out.empty() ? desk::file_name(id) : options.out,
                             "groat sheets " + printable(id));
}

} // namespace groat::cli
