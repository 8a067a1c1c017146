#include "session.hpp"

#include <groat/paper/quote_sheet.hpp>
#include <groat/trade/quote.hpp>

namespace groat::cli {

int quote(Options const& options) {
    Session session(options);
    if (!session.date_or(std::nullopt)) return command_line_wrong;
    if (session.has_errors()) return session.give_up();
    Book const& book = session.book();
    Order const* const order = session.order(options.subject);
    if (order == nullptr) return command_line_wrong;
    Costing const costing(book, *session.date_or(order->date));
    auto const result = groat::quote(costing, *order, session.found());
    if (!result) return session.give_up();
    if (options.audience == "maker") return session.hand_over(maker_quote_sheet(*result, costing));
    return session.hand_over(client_quote_sheet(*result, book));
}

} // namespace groat::cli
