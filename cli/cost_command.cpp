#include "session.hpp"

#include <groat/price/item_cost.hpp>
#include <groat/sheets/cost_sheet.hpp>

namespace groat::cli {

int cost(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.is_in_doubt()) return session.give_up();
    auto const wanted = session.item(options.subject, options.sale_unit);
    if (!wanted) return session.refusal();
    Costing const costing(session.linked(), *date);
    auto const item = cost_item(costing, wanted->formula, wanted->unit, session.found());
    if (!item) return session.give_up();
    return session.hand_over(cost_sheet(*item, costing));
}

} // namespace groat::cli
