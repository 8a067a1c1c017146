#pragma once

#include <groat/price/named_costs.hpp>

#include <groat/base/linkage.hpp>

#include <algorithm>

namespace groat {

GROAT_INLINE std::vector<NamedCost> named_costs(ItemCost const& item, std::size_t most,
                                                std::size_t fewest) {
    std::vector<NamedCost> all;
    for (IngredientUse const& use : item.cost.ingredients)
        if (!use.eaten.is_zero())
            all.push_back({NamedCost::Kind::ingredient, use.ingredient, 1, use.eaten});
    std::stable_sort(all.begin(), all.end(),
                     [](NamedCost const& a, NamedCost const& b) { return a.cost > b.cost; });
    if (all.size() + 1 > most) { // one for what is lost
        std::size_t const kept = std::max<std::size_t>(most > 2 ? most - 2 : 0, fewest);
        if (all.size() > kept + 1) {
            NamedCost others{NamedCost::Kind::others, 0, all.size() - kept, {}};
            for (std::size_t i = kept; i < all.size(); ++i) others.cost += all[i].cost;
            all.resize(kept);
            all.push_back(others);
        }
    }
    YieldLoss const& loss = item.line.loss;
    if (Money const lost = loss.trim + loss.process + loss.rounding; !lost.is_zero())
        all.push_back({NamedCost::Kind::lost, 0, 0, lost});
    return all;
}

} // namespace groat
