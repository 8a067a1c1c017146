#include "session.hpp"

#include <groat/sheets/make_sheet.hpp>

namespace groat::cli {

int make(Options const& options) {
    Session session(options);
    if (!session.date_or(std::nullopt)) return command_line_wrong;
    if (session.is_in_doubt({BookPart::stock})) return session.give_up();
    auto const orders = session.orders(options.subjects);
    if (!orders) return session.refusal();
    std::optional<Date> newest;
    for (Order const* const order : *orders)
        if (order->date && (!newest || *order->date > *newest)) newest = order->date;
    Costing const costing(session.linked(), *session.date_or(newest));
    auto const plan = produce(costing, *orders, session.found());
    if (!plan) return session.give_up();
    return session.hand_over(make_sheet(*plan, costing));
}

} // namespace groat::cli
