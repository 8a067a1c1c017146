#pragma once

#include <groat/price/compare.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/offers_in_force.hpp>
#include <groat/cost/unit_cost.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE Money pack_price(Offer const& offer, Integer const& packs) {
    Money price = offer.price;
    Number reached;
    for (PriceBreak const& each : offer.breaks) {
        if (each.packs > packs || each.packs < reached) continue;
        reached = each.packs;
        price = each.price;
    }
    return price;
}

GROAT_INLINE Offer const* last_offer(Book const& book, Offer const& offer, Offer::Kind kind,
                                     Date date) {
    Ingredient const& ingredient = book.ingredients[offer.item.index];
    auto const content = content_of(offer, ingredient);
    if (!content) return nullptr;
    auto const is_that_pack = [&](Offer const& other) {
        auto const own = content_of(other, ingredient);
        return own && *own == *content;
    };
    Offer const* last = nullptr;
    for (std::size_t const index : book.offers_of[offer.item.index]) {
        Offer const& other = book.offers[index];
        if (other.kind != kind || other.supplier != offer.supplier || !other.has_begun(date) ||
            !is_that_pack(other))
            continue;
        if (last == nullptr || !(other.from < last->from)) last = &other;
    }
    return last == nullptr || last->has_ended(date) ? nullptr : last;
}

GROAT_INLINE Result<Comparison> compare_offers(Book const& book, std::size_t ingredient, Date date,
                                               std::optional<Number> const& wanted) {
    auto const in_force = offers_in_force(book, ingredient, date);
    if (!in_force) return Refused(in_force.error());
    if (in_force->empty()) return Refused(unit_cost_detail::no_price(book, ingredient, date));
    Comparison result{ingredient, wanted, {}};
    for (std::size_t const index : *in_force) {
        Offer const& offer = book.offers[index];
        Supplier const& supplier = book.suppliers[offer.supplier];
        Number const untaxed = 1 + offer.tax_included.value();
        ComparedOffer entry;
        entry.offer = index;
        entry.content = *content_of(offer, book.ingredients[ingredient]);
        entry.yield = yield_of(offer, book.ingredients[ingredient]);
        entry.unit_cost = landed_pack_cost(offer, book) / entry.content;
        entry.price = offer.price / untaxed / entry.content;
        entry.freight = entry.unit_cost - entry.price;
        entry.usable = entry.unit_cost / entry.yield.value();
        if (Offer const* const listed = last_offer(book, offer, Offer::Kind::listed, date))
            entry.listed = listed->untaxed(listed->price) / entry.content;
        if (Offer const* const paid = last_offer(book, offer, Offer::Kind::paid, date))
            entry.paid = {*paid->from, paid->untaxed(paid->price) / entry.content};
        if (offer.from) entry.age = date - *offer.from;
        entry.is_stale = entry.age && book.shop.stale_after && *entry.age > *book.shop.stale_after;
        entry.packs = wanted ? ceiling(*wanted / entry.yield.value() / entry.content).numerator()
                             : Integer(1);
        Money const goods = pack_price(offer, entry.packs) * Number(entry.packs);
        entry.goods = (goods + (offer.freight + offer.deposit) * Number(entry.packs)) / untaxed;
        entry.delivery = supplier.delivery_of(goods);
        entry.is_above_most = offer.most_packs && entry.packs > *offer.most_packs;
        entry.is_below_minimum = supplier.minimum_order && goods < *supplier.minimum_order;
        result.offers.push_back(std::move(entry));
    }
    std::stable_sort(
        result.offers.begin(), result.offers.end(),
        [](ComparedOffer const& a, ComparedOffer const& b) { return a.usable < b.usable; });
    Money const best = result.offers.front().usable;
    for (ComparedOffer& entry : result.offers) {
        entry.extra = (entry.usable - best) * wanted.value_or(Number());
        if (best.is_zero()) continue;
        entry.dearer = entry.usable / best - 1;
        entry.break_even_yield = entry.unit_cost / best;
    }
    return result;
}

GROAT_INLINE Result<std::vector<PastPrice>> price_history(Book const& book,
                                                          std::size_t ingredient) {
    std::vector<PastPrice> history;
    for (std::size_t const index : book.offers_of[ingredient]) {
        Offer const& offer = book.offers[index];
        auto const content = content_of(offer, book.ingredients[ingredient]);
        if (!content) return Refused(content.error());
        Yield const yield = yield_of(offer, book.ingredients[ingredient]);
        history.push_back(
            {index, offer.from, landed_pack_cost(offer, book) / *content / yield.value()});
    }
    std::stable_sort(history.begin(), history.end(),
                     [](PastPrice const& a, PastPrice const& b) { return a.from < b.from; });
    return history;
}

} // namespace groat
