#pragma once

#include <groat/desk/quotes.hpp>

#include <groat/base/linkage.hpp>
#include <groat/desk/answer.hpp>
#include <groat/desk/lookup.hpp>
#include <groat/price/quote.hpp>
#include <groat/price/quote_for_client.hpp>
#include <groat/sheets/client_quote_sheet.hpp>
#include <groat/sheets/quote_sheet.hpp>

#include <algorithm>
#include <utility>

namespace groat::desk {

namespace quotes_detail {

/// One order quoted, alone or with what is made together with it.
inline Result<Sheet> quote_sheet(LinkedBook const& linked, Dates const& dates,
                                 QuoteWish const& wish, Order const& order,
                                 std::vector<Order const*> companions, Diagnostics& found) {
    Book const& book = linked.book();
    Costing const costing(linked, day_of_order(dates, order, companions));
    auto const result = quote(costing, order, std::move(companions), found);
    if (!result) return as_found();
    if (!wish.is_for_maker) return client_quote_sheet(quote_for_client(*result, book), book.shop);
    if (!wish.has_packs) return maker_quote_sheet(*result, costing);
    auto const buying = buy(costing, {&order}, found);
    if (!buying) return as_found();
    return maker_quote_sheet(*result, costing, costed_and_paid(costing, *buying, &*result));
}

} // namespace quotes_detail

GROAT_INLINE std::vector<Order const*> whole_set(std::vector<Order const*> orders,
                                                 Book const& book) {
    for (std::size_t i = 0; i < orders.size(); ++i)
        for (Order const* const other : companions_of(*orders[i], book))
            if (std::find(orders.begin(), orders.end(), other) == orders.end())
                orders.push_back(other);
    return orders;
}

GROAT_INLINE Result<std::vector<Sheet>> quote_sheets(LinkedBook const& linked, Dates const& dates,
                                                     QuoteWish const& wish, Diagnostics& found) {
    Book const& book = linked.book();
    auto const named = find_orders(book, wish.orders);
    if (!named) return Refused(named.error());
    std::vector<Order const*> const all = whole_set(*named, book);
    std::vector<Sheet> sheets;
    for (Order const* const order : *named) {
        std::vector<Order const*> companions = all;
        std::erase(companions, order);
        auto sheet =
            quotes_detail::quote_sheet(linked, dates, wish, *order, std::move(companions), found);
        if (!sheet) return Refused(sheet.error());
        sheets.push_back(*std::move(sheet));
    }
    return sheets;
}

} // namespace groat::desk
