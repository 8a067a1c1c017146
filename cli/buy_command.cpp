#include "session.hpp"

#include <groat/paper/buy_sheet.hpp>
#include <groat/trade/buying.hpp>

#include <algorithm>

namespace groat::cli {

int buy(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (session.has_errors()) return session.give_up();
    Book const& book = session.book();
    auto const orders = session.orders(options.subjects);
    if (!orders) return command_line_wrong;
    auto const supplier =
        std::find_if(book.suppliers.begin(), book.suppliers.end(),
                     [&](Supplier const& each) { return each.name == options.supplier; });
    if (!options.supplier.empty() && supplier == book.suppliers.end())
        return session.unknown("supplier", options.supplier, names_of(book.suppliers));
    Costing const costing(book, *date);
    auto const buying = groat::buy(costing, *orders, session.found());
    if (!buying) return session.give_up();
    if (options.supplier.empty()) return session.hand_over(buy_sheet(*buying, book));
    for (Basket const& basket : buying->baskets)
        if (book.suppliers[basket.supplier].name == options.supplier)
            return session.hand_over(supplier_order_sheet(basket, buying->date, book));
    complain(fmt::format("groat: nothing is to be bought from '{}'\n  help: groat buy without "
                         "--from shows from whom\n",
                         printable(options.supplier)));
    return command_line_wrong;
}

} // namespace groat::cli
