/// By what each food is costed. Mass is the rule, since formulas are weighed; but nothing is asked for that the
/// arithmetic does not need: what is only ever bought by the piece, or only by volume, is costed so until the
/// books say what one, or a cup, weighs.
#pragma once

#include <groat/model/book.hpp>

#include <optional>
#include <vector>

namespace groat {

/// By what a food is costed whose packs are all of one dimension.
[[nodiscard]] inline Dimension base_of(Ingredient const& food, Dimension packs) {
    if (packs == Dimension::count && !food.grams_each) return packs;
    if (packs == Dimension::volume && food.densities.empty()) return packs;
    return Dimension::mass;
}

/// Sets it for each ingredient, by all its packs: offered and bought, in force or not. What a yield test weighs is
/// costed by mass. The names are resolved.
inline void link_bases(Book& book) {
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
