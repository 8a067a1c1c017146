#pragma once

#include <groat/model/base_links.hpp>

#include <groat/base/linkage.hpp>

#include <optional>
#include <vector>

namespace groat {

GROAT_INLINE Dimension base_of(Ingredient const& food, Dimension packs) {
    if (packs == Dimension::count && !food.grams_each) return packs;
    if (packs == Dimension::volume && food.densities.empty()) return packs;
    return Dimension::mass;
}

GROAT_INLINE void link_bases(Book& book) {
    std::vector<std::optional<Dimension>> packs(book.ingredients.size());
    auto const see = [&](Reference const& item, Dimension dimension) {
        if (!item.is_resolved()) return;
        auto& seen = packs[item.index];
        seen = !seen || *seen == dimension ? dimension : Dimension::mass;
    };
    for (Offer const& offer : book.offers) see(offer.item, offer.pack.dimension);
    for (Receipt const& receipt : book.receipts)
        for (BoughtPacks const& bought : receipt.items) see(bought.item, bought.pack.dimension);
    for (YieldTest const& test : book.yield_tests) see(test.item, Dimension::mass);
    for (std::size_t i = 0; i < packs.size(); ++i)
        book.ingredients[i].base = base_of(book.ingredients[i], packs[i].value_or(Dimension::mass));
}

} // namespace groat
