/// The receipts that a plan of buying would bring home, to be corrected when the goods are there.
#pragma once

#include <groat/measure/coins.hpp>
#include <groat/model/receipt.hpp>
#include <groat/plan/buying.hpp>

#include <vector>

namespace groat {

/// A receipt for each basket, of the day of buying: for all packs of a line together
///
///     paid = packs * (price at so many packs + freight + deposit),   as listed, to the smallest coin
///
/// with the tax that the offer says is contained. A delivery is on no receipt.
/// Example  2 packs at 33.00, freight 1.00, deposit 2.00  ->  paid 72.00, deposit 4.00
[[nodiscard]] std::vector<Receipt> drafted_receipts(std::vector<Basket> const& baskets, Date bought,
                                                    Book const& book);

// ---------------------------------------------------------------------------------------------------

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

inline std::vector<Receipt> drafted_receipts(std::vector<Basket> const& baskets, Date bought,
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
