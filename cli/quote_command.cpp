#include "session.hpp"

#include <groat/price/quote.hpp>
#include <groat/sheets/quote_sheet.hpp>

#include <algorithm>

namespace groat::cli {

namespace {

/// One order quoted, alone or with what is made together with it.
std::optional<Sheet> quoted(Session& session, Options const& options, Order const& order,
                            std::vector<Order const*> companions) {
    Costing const costing(session.linked(), *session.date_or(pricing_date(order, companions)));
    auto const result = groat::quote(costing, order, std::move(companions), session.found());
    if (!result) return std::nullopt;
    if (options.audience != "maker") return client_quote_sheet(*result, session.book());
    if (options.with.empty()) return maker_quote_sheet(*result, costing);
    auto const buying = groat::buy(costing, {&order}, session.found());
    if (!buying) return std::nullopt;
    return maker_quote_sheet(*result, costing, costed_and_paid(costing, *buying, &*result));
}

/// The orders named, and all that the books say are made together with one of them.
std::vector<Order const*> whole_set(std::vector<Order const*> named, Book const& book) {
    for (std::size_t i = 0; i < named.size(); ++i)
        for (Order const* const other : companions_of(*named[i], book))
            if (std::find(named.begin(), named.end(), other) == named.end()) named.push_back(other);
    return named;
}

} // namespace

int quote(Options const& options) {
    Session session(options);
    if (!session.date_or(std::nullopt)) return command_line_wrong;
    if (!options.with.empty() && options.audience != "maker") {
        complain("groat: what packs cost is not for the client\n  help: add --for maker\n");
        return command_line_wrong;
    }
    if (options.with.empty() ? session.is_in_doubt()
                             : session.is_in_doubt({BookPart::orders, BookPart::stock}))
        return session.give_up();
    auto const named = session.orders(options.subjects);
    if (!named) return session.refusal();
    std::vector<Order const*> const all = whole_set(*named, session.book());
    std::vector<Sheet> sheets;
    for (Order const* const order : *named) {
        std::vector<Order const*> companions = all;
        std::erase(companions, order);
        auto sheet = quoted(session, options, *order, std::move(companions));
        if (!sheet) return session.give_up();
        sheets.push_back(*std::move(sheet));
    }
    return session.hand_over(sheets);
}

} // namespace groat::cli
