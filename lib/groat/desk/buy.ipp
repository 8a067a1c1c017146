#pragma once

#include <groat/desk/buy.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/write_receipt.hpp>
#include <groat/desk/answer.hpp>
#include <groat/desk/lookup.hpp>
#include <groat/plan/receipt_draft.hpp>
#include <groat/sheets/buy_sheet.hpp>

#include <algorithm>

namespace groat::desk {

namespace buy_detail {

inline Result<Buying> buying_of(Costing const& costing, BuyWish const& wish, Diagnostics& found) {
    Book const& book = costing.book();
    auto const orders = find_orders(book, wish.orders);
    if (!orders) return Refused(orders.error());
    std::vector<std::string> const suppliers = names_of(book.suppliers);
    if (!wish.supplier.empty() &&
        std::find(suppliers.begin(), suppliers.end(), wish.supplier) == suppliers.end())
        return nothing_called("supplier", wish.supplier, suppliers, book, {BookPart::prices});
    auto buying = buy(costing, *orders, found);
    if (!buying) return as_found();
    return *std::move(buying);
}

/// The baskets wished for, at least one.
inline Result<std::vector<Basket>> baskets_of(Buying const& buying, BuyWish const& wish,
                                              Book const& book) {
    std::vector<Basket> baskets = buying.baskets;
    if (!wish.supplier.empty())
        std::erase_if(baskets, [&](Basket const& basket) {
            return book.suppliers[basket.supplier].name != wish.supplier;
        });
    if (!baskets.empty()) return baskets;
    if (wish.supplier.empty())
        return refuse({}, "nothing is to be bought: the shelf holds all of it");
    return refuse({}, fmt::format("nothing is to be bought from '{}'", printable(wish.supplier)),
                  "groat buy without --from shows from whom");
}

} // namespace buy_detail

GROAT_INLINE Result<Sheet> buying_sheet(Costing const& costing, BuyWish const& wish,
                                        Diagnostics& found) {
    auto const buying = buy_detail::buying_of(costing, wish, found);
    if (!buying) return Refused(buying.error());
    if (wish.supplier.empty())
        return buy_sheet(*buying, costing.book(), buying_days(costing, *buying),
                         costed_and_paid(costing, *buying));
    auto const baskets = buy_detail::baskets_of(*buying, wish, costing.book());
    if (!baskets) return Refused(baskets.error());
    return supplier_order_sheet(baskets->front(), buying->date, costing.book());
}

GROAT_INLINE Result<std::string> receipt_drafts(Costing const& costing, BuyWish const& wish,
                                                Diagnostics& found) {
    auto const buying = buy_detail::buying_of(costing, wish, found);
    if (!buying) return Refused(buying.error());
    auto const baskets = buy_detail::baskets_of(*buying, wish, costing.book());
    if (!baskets) return Refused(baskets.error());
    bool const has_delivery =
        std::any_of(baskets->begin(), baskets->end(),
                    [](Basket const& basket) { return !basket.delivery.is_zero(); });
    std::string text;
    for (Receipt const& receipt : drafted_receipts(*baskets, buying->date, costing.book())) {
        std::string note;
        if (text.empty())
            note = fmt::format("A draft by groat buy: put in what was really bought and paid, and "
                               "the day.{}",
                               has_delivery ? " A delivery does not belong here." : "");
        text += (text.empty() ? "" : "---\n") + write_receipt(receipt, note);
    }
    return text;
}

} // namespace groat::desk
