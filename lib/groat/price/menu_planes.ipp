#pragma once

#include <groat/price/menu_planes.hpp>

#include <groat/base/linkage.hpp>

#include <utility>

namespace groat {

GROAT_INLINE std::vector<MenuPlane> menu_planes(MenuCost const& cost, MixOver over) {
    std::vector<MenuCategory> const& categories = cost.menu->categories;
    bool const is_whole = over == MixOver::menu || categories.empty();
    std::vector<MenuPlane> all;
    if (!is_whole)
        for (MenuCategory const& category : categories) all.push_back({category.name, {}, {}});
    all.push_back({is_whole ? "the whole menu" : "in no category", {}, {}});
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        Reference const& category = cost.lines[i].item->category;
        bool const is_apart = !is_whole && category.is_resolved();
        (is_apart ? all[category.index] : all.back()).lines.push_back(i);
    }
    std::vector<MenuPlane> planes;
    for (MenuPlane& plane : all) {
        if (plane.lines.empty()) continue;
        std::vector<ItemSales> sales;
        for (std::size_t const i : plane.lines)
            sales.push_back({cost.lines[i].units(), cost.lines[i].earned.contribution});
        plane.mix = menu_mix(sales);
        planes.push_back(std::move(plane));
    }
    return planes;
}

} // namespace groat
