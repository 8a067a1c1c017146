#pragma once

#include <groat/plan/receipt_draft.hpp>

#include <groat/base/linkage.hpp>
#include <groat/measure/coins.hpp>

namespace groat {

namespace receipt_draft_detail {

inline BoughtPacks bought(PackLine const& line, Book const& book) {
    Offer const& offer = book.offers[line.offer];
    Number const packs(line.packs);
    auto const as_paid = [&](Money const& amount) {
        return to_coins(Money(0, book.shop.currency) + amount).money();
    };
    BoughtPacks result;
    result.item = offer.item;
    result.pack = offer.pack;
    result.pack_text = offer.pack_text;
    result.packs = line.packs;
    result.paid = as_paid((line.price + offer.freight + offer.deposit) * packs);
    if (!offer.deposit.is_zero()) result.deposit = as_paid(offer.deposit * packs);
    result.tax_included = offer.tax_included;
    return result;
}

} // namespace receipt_draft_detail

GROAT_INLINE std::vector<Receipt> drafted_receipts(std::vector<Basket> const& baskets, Date bought,
                                                   Book const& book) {
    std::vector<Receipt> receipts;
    for (Basket const& basket : baskets) {
        Receipt receipt;
        receipt.bought = bought;
        receipt.supplier = {book.suppliers[basket.supplier].name, {}, basket.supplier};
        for (PackLine const& line : basket.lines)
            receipt.items.push_back(receipt_draft_detail::bought(line, book));
        receipts.push_back(std::move(receipt));
    }
    return receipts;
}

} // namespace groat
