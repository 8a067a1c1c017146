#include "session.hpp"

#include <groat/books/write_receipt.hpp>
#include <groat/plan/buying.hpp>
#include <groat/plan/receipt_draft.hpp>
#include <groat/sheets/buy_sheet.hpp>

#include <algorithm>

namespace groat::cli {

namespace {

/// A document for each receipt, as purchases/ has it.
std::string drafted(std::vector<Basket> const& baskets, Date bought, Book const& book) {
    bool const has_delivery = std::any_of(baskets.begin(), baskets.end(), [](Basket const& basket) {
        return !basket.delivery.is_zero();
    });
    std::string text;
    for (Receipt const& receipt : drafted_receipts(baskets, bought, book)) {
        std::string note;
        if (text.empty())
            note = fmt::format("A draft by groat buy: put in what was really bought and paid, and "
                               "the day.{}",
                               has_delivery ? " A delivery does not belong here." : "");
        text += (text.empty() ? "" : "---\n") + write_receipt(receipt, note);
    }
    return text;
}

} // namespace

int buy(Options const& options) {
    Session session(options);
    auto const date = session.date_or(std::nullopt);
    if (!date) return command_line_wrong;
    if (options.as_receipt && !options.as.empty()) {
        complain("groat: a draft of receipts is YAML, as purchases/ has it\n"
                 "  help: leave out --as\n");
        return command_line_wrong;
    }
    if (session.is_in_doubt({BookPart::orders, BookPart::stock})) return session.give_up();
    Book const& book = session.book();
    auto const orders = session.orders(options.subjects);
    if (!orders) return session.refusal();
    auto const supplier =
        std::find_if(book.suppliers.begin(), book.suppliers.end(),
                     [&](Supplier const& each) { return each.name == options.supplier; });
    if (!options.supplier.empty() && supplier == book.suppliers.end())
        return session.unknown("supplier", {BookPart::prices}, options.supplier,
                               names_of(book.suppliers));
    Costing const costing(session.linked(), *date);
    auto const buying = groat::buy(costing, *orders, session.found());
    if (!buying) return session.give_up();
    if (options.supplier.empty() && !options.as_receipt)
        return session.hand_over(buy_sheet(*buying, book, buying_days(costing, *buying),
                                           costed_and_paid(costing, *buying)));
    std::vector<Basket> baskets = buying->baskets;
    if (!options.supplier.empty())
        std::erase_if(baskets, [&](Basket const& basket) {
            return book.suppliers[basket.supplier].name != options.supplier;
        });
    if (baskets.empty()) {
        complain(options.supplier.empty()
                     ? "groat: nothing is to be bought: the shelf holds all of it\n"
                     : fmt::format("groat: nothing is to be bought from '{}'\n  help: groat buy "
                                   "without --from shows from whom\n",
                                   printable(options.supplier)));
        return command_line_wrong;
    }
    if (!options.as_receipt)
        return session.hand_over(supplier_order_sheet(baskets.front(), buying->date, book));
    session.tell();
    return session.hand_over(drafted(baskets, buying->date, book));
}

} // namespace groat::cli
