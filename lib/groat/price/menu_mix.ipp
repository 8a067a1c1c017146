#pragma once

#include <groat/price/menu_mix.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/sum.hpp>

#include <span>

namespace groat {

GROAT_INLINE MenuGroup MixedItem::group() const {
    if (sells) return earns ? MenuGroup::sells_and_earns : MenuGroup::sells;
    return earns ? MenuGroup::earns : MenuGroup::neither;
}

GROAT_INLINE std::optional<MenuMix> menu_mix(std::vector<ItemSales> const& items) {
    MenuMix mix;
    for (ItemSales const& item : items) mix.units += item.units;
    if (mix.units.is_zero()) return std::nullopt;
    mix.popularity_line = popular_from / items.size();
    mix.contribution_line =
        sum_in_pairs(std::span<ItemSales const>(items),
                     [](ItemSales const& item) { return item.contribution * item.units; }) /
        mix.units;
    for (ItemSales const& item : items) {
        Number share = item.units / mix.units;
        bool const sells = share >= mix.popularity_line;
        bool const earns =
            item.contribution >= mix.contribution_line && !item.contribution.is_negative();
        mix.items.push_back({std::move(share), sells, earns});
    }
    return mix;
}

} // namespace groat
