#pragma once

#include <groat/model/receipt_links.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/model/convert.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace groat {

GROAT_INLINE void drop_paid_offers(Book& book) {
    std::erase_if(book.offers, [](Offer const& offer) { return !offer.is_listed(); });
}

namespace receipt_links_detail {

inline void judge_supplier(Receipt const& receipt, Book const& book,
                           std::vector<std::string> const& listed, Diagnostics& found) {
    Supplier const& supplier = book.suppliers[receipt.supplier.index];
    bool const has_list = std::find(listed.begin(), listed.end(), supplier.name) != listed.end();
    if (auto const near = nearest_name(supplier.name, listed); near && !has_list)
        found.warn(
            receipt.supplier.origin, "new-supplier",
            fmt::format("'{}' has no price list", supplier.name),
            fmt::format("did you mean '{}'? If not, all is well: who has no list has the prices "
                        "that were paid",
                        *near));
    bool const is_for_good =
        std::any_of(receipt.items.begin(), receipt.items.end(),
                    [](BoughtPacks const& bought) { return !bought.is_stopgap; });
    if (supplier.is_only_compared && is_for_good)
        found.warn(
            receipt.supplier.origin, "bought-where-compared",
            fmt::format("this was bought from {}, whose prices are only compared", supplier.name),
            "take 'only compared' out of the terms of their list, or add 'stopgap: yes' to "
            "what was bought there just once");
}

inline bool is_same_pack(Quantity const& a, Quantity const& b, Ingredient const& ingredient) {
    if (a.dimension == b.dimension) return a.amount == b.amount;
    auto const one = amount_in(a, ingredient);
    auto const other = amount_in(b, ingredient);
    return one && other && *one == *other;
}

/// The list price that a purchase takes its facts from.
inline Offer const* list_price_of(Book const& book, Offer const& paid) {
    Offer const* newest = nullptr;
    Offer const* first = nullptr;
    for (std::size_t const index : book.offers_of[paid.item.index]) {
        Offer const& offer = book.offers[index];
        if (!offer.is_listed() || offer.supplier != paid.supplier ||
            !is_same_pack(offer.pack, paid.pack, book.ingredients[paid.item.index]))
            continue;
        if (offer.has_begun(*paid.from) && (newest == nullptr || !(offer.from < newest->from)))
            newest = &offer;
        if (first == nullptr || offer.from < first->from) first = &offer;
    }
    return newest != nullptr ? newest : first;
}

inline Offer offer_of(Book const& book, Receipt const& receipt, BoughtPacks const& bought) {
    Offer offer;
    offer.item = bought.item;
    offer.pack = bought.pack;
    offer.pack_text = bought.pack_text;
    offer.price = (bought.paid - bought.deposit) / Number(bought.packs);
    offer.deposit = bought.deposit / Number(bought.packs);
    offer.tax_included = bought.tax_included;
    offer.from = receipt.bought;
    offer.supplier = receipt.supplier.index;
    offer.kind = bought.is_stopgap ? Offer::Kind::stopgap : Offer::Kind::paid;
    offer.origin = bought.origin;
    if (Offer const* const listed = list_price_of(book, offer)) {
        offer.yield = listed->yield;
        offer.yield_source = listed->yield_source;
        offer.code = listed->code;
        offer.most_packs = listed->most_packs;
    }
    return offer;
}

} // namespace receipt_links_detail

GROAT_INLINE void link_suppliers_of_receipts(Book& book, Diagnostics& found) {
    std::vector<std::string> listed;
    std::vector<bool> has_list(book.suppliers.size());
    for (Offer const& offer : book.offers) has_list[offer.supplier] = true;
    for (std::size_t i = 0; i < has_list.size(); ++i)
        if (has_list[i]) listed.push_back(book.suppliers[i].name);
    for (Receipt& receipt : book.receipts) {
        receipt.supplier.index = unresolved;
        for (std::size_t i = 0; i < book.suppliers.size(); ++i)
            if (book.suppliers[i].name == receipt.supplier.name) receipt.supplier.index = i;
        if (!receipt.supplier.is_resolved() && receipt.supplier.is_given())
            found.error(receipt.supplier.origin, "unknown-supplier",
                        fmt::format("no supplier is called '{}'", receipt.supplier.name),
                        did_you_mean(receipt.supplier.name, listed));
        else if (receipt.supplier.is_resolved())
            receipt_links_detail::judge_supplier(receipt, book, listed, found);
    }
}

GROAT_INLINE void add_paid_offers(Book& book) {
    struct Item {
        Receipt const* receipt;
        BoughtPacks const* bought;
        Money outlay;
    };
    std::vector<Item> all;
    for (Receipt const& receipt : book.receipts)
        for (BoughtPacks const& bought : receipt.items)
            if (receipt.supplier.is_resolved() && bought.item.is_resolved() && !bought.is_in_doubt)
                all.push_back({&receipt, &bought, bought.outlay()});
    std::reverse(all.begin(), all.end());
    std::stable_sort(all.begin(), all.end(), [](Item const& a, Item const& b) {
        if (a.receipt->bought != b.receipt->bought) return a.receipt->bought < b.receipt->bought;
        return a.outlay < b.outlay;
    });
    for (Item const& each : all) {
        Offer offer = receipt_links_detail::offer_of(book, *each.receipt, *each.bought);
        book.offers_of[offer.item.index].push_back(book.offers.size());
        book.offers.push_back(std::move(offer));
    }
}

GROAT_INLINE std::vector<Offer> offers_of(Receipt const& receipt, Book const& book) {
    std::vector<Offer> offers;
    std::vector<Money> outlays;
    for (BoughtPacks const& bought : receipt.items) {
        Offer offer = receipt_links_detail::offer_of(book, receipt, bought);
        std::size_t i = 0;
        while (i < offers.size() &&
               (offers[i].item.index != offer.item.index ||
                !receipt_links_detail::is_same_pack(offers[i].pack, offer.pack,
                                                    book.ingredients[offer.item.index])))
            ++i;
        if (i == offers.size()) {
            offers.push_back(std::move(offer));
            outlays.push_back(bought.outlay());
        } else if (outlays[i] < bought.outlay()) {
            offers[i] = std::move(offer);
            outlays[i] = bought.outlay();
        }
    }
    return offers;
}

} // namespace groat
