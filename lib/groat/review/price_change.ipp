#pragma once

#include <groat/review/price_change.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/offers_in_force.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace groat {

namespace price_change_detail {

/// The size of a pack: its content in the unit that the ingredient is calculated in, where that is known.
using Size = std::tuple<std::size_t, Dimension, Number>;

inline Size size_of(Offer const& offer, std::size_t item, Ingredient const& ingredient) {
    if (auto content = content_of(offer, ingredient))
        return {item, ingredient.costed_by(), *std::move(content)};
    return {item, offer.pack.dimension, offer.pack.amount};
}

/// The supplier's offers in force, by reading order.
inline std::vector<std::size_t> in_force(Book const& book, std::string_view supplier, Date date) {
    std::map<Size, std::size_t> newest;
    for (std::size_t i = 0; i < book.offers.size(); ++i) {
        Offer const& offer = book.offers[i];
        if (!offer.is_listed() || book.suppliers[offer.supplier].name != supplier ||
            !offer.item.is_resolved() || !offer.has_begun(date))
            continue;
        Size size = size_of(offer, offer.item.index, book.ingredients[offer.item.index]);
        auto const [known, is_new] = newest.emplace(std::move(size), i);
        if (!is_new && !(offer.from < book.offers[known->second].from)) known->second = i;
    }
    std::vector<std::size_t> result;
    for (auto const& [size, index] : newest)
        if (!book.offers[index].has_ended(date)) result.push_back(index);
    std::sort(result.begin(), result.end());
    return result;
}

inline std::vector<std::string> lost(Offer const& before, Offer const& after) {
    std::vector<std::string> words;
    if (before.yield && before.yield != after.yield && !after.yield)
        words.push_back(fmt::format("yield {} %", decimal_at_most(before.yield->value() * 100, 2)));
    if (!before.freight.is_zero() && after.freight.is_zero()) words.push_back("freight");
    if (!before.deposit.is_zero() && after.deposit.is_zero()) words.push_back("deposit");
    if (!before.breaks.empty() && after.breaks.empty()) words.push_back("price breaks");
    return words;
}

inline PriceChange between(Offer const& before, Offer const& after, Size const& old_size,
                           Size const& new_size) {
    PriceChange result;
    result.was = before.pack_cost();
    result.now = after.pack_cost();
    result.lost = lost(before, after);
    bool const is_same_pack = old_size == new_size;
    bool const is_comparable = std::get<1>(old_size) == std::get<1>(new_size);
    if (is_comparable && !result.was.is_zero())
        result.change =
            result.now / result.was * (std::get<2>(old_size) / std::get<2>(new_size)) - 1;
    using Kind = PriceChange::Kind;
    result.kind = !is_same_pack             ? Kind::repacked
                  : result.was < result.now ? Kind::up
                  : result.now < result.was ? Kind::down
                                            : Kind::unchanged;
    return result;
}

} // namespace price_change_detail

GROAT_INLINE std::vector<PriceChange> price_changes(Book const& book, std::string_view supplier,
                                                    std::vector<Offer> const& listed, Date date) {
    namespace parts = price_change_detail;
    using Kind = PriceChange::Kind;
    std::vector<PriceChange> changes;
    std::map<parts::Size, std::size_t> old;
    for (std::size_t const index : parts::in_force(book, supplier, date)) {
        std::size_t const item = book.offers[index].item.index;
        old.emplace(parts::size_of(book.offers[index], item, book.ingredients[item]), index);
    }
    struct Pack {
        parts::Size size;
        std::size_t offer;
    };
    std::map<std::size_t, std::vector<Pack>> added;
    auto const compare = [&](Pack const& before, Pack const& after) {
        PriceChange change =
            parts::between(book.offers[before.offer], listed[after.offer], before.size, after.size);
        change.ingredient = std::get<0>(after.size);
        change.before = before.offer;
        change.after = after.offer;
        changes.push_back(std::move(change));
    };
    for (std::size_t i = 0; i < listed.size(); ++i) {
        std::size_t const item = listed[i].item.index;
        Pack const pack{parts::size_of(listed[i], item, book.ingredients[item]), i};
        auto const same = old.find(pack.size);
        if (same == old.end()) {
            added[item].push_back(pack);
            continue;
        }
        compare({same->first, same->second}, pack);
        old.erase(same);
    }
    std::map<std::size_t, std::vector<Pack>> gone;
    for (auto const& [size, index] : old) gone[std::get<0>(size)].push_back({size, index});
    for (auto const& [item, packs] : added) {
        auto const left = gone.find(item);
        if (packs.size() == 1 && left != gone.end() && left->second.size() == 1) {
            compare(left->second.front(), packs.front());
            gone.erase(left);
            continue;
        }
        for (Pack const& pack : packs)
            changes.push_back(
                {Kind::added, item, {}, pack.offer, {}, listed[pack.offer].pack_cost()});
    }
    for (auto const& [item, packs] : gone)
        for (Pack const& pack : packs)
            changes.push_back(
                {Kind::gone, item, pack.offer, {}, book.offers[pack.offer].pack_cost()});
    auto const rank = [](PriceChange const& each) {
        Number const change = each.change.value_or(Number());
        Number const size = each.kind == Kind::up     ? -change
                            : each.kind == Kind::down ? change
                                                      : Number();
        // What is gone has no place in the new list; the others stand as they stand there.
        return std::tuple(each.kind, size, each.after.value_or(0), each.before.value_or(0));
    };
    std::sort(changes.begin(), changes.end(),
              [&](PriceChange const& a, PriceChange const& b) { return rank(a) < rank(b); });
    return changes;
}

GROAT_INLINE std::vector<PriceChange> paid_against_list(Book const& book, std::string_view supplier,
                                                        std::vector<Offer> const& paid, Date date) {
    std::vector<PriceChange> changes = price_changes(book, supplier, paid, date);
    std::erase_if(changes,
                  [](PriceChange const& each) { return each.kind == PriceChange::Kind::gone; });
    for (PriceChange& each : changes) each.lost.clear();
    return changes;
}

} // namespace groat
