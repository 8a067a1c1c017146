/// Which items of a menu are judged against each other: those of one category, since a mix over unlike things
/// (coffee against cakes) says nothing of either; or, where that is wanted, all of the menu. Each item stands
/// in exactly one plane.
#pragma once

#include <groat/price/menu.hpp>

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

enum class MixOver { categories, menu };

/// Fewer items than this are listed, not placed: so few say little of each other.
inline constexpr std::size_t least_placed = 4;

struct MenuPlane {
    std::string name; ///< the category's; of several or all without one in plain words
    std::vector<std::size_t> lines; ///< of the menu, in its order
    std::optional<MenuMix> mix;     ///< of these lines; none where nothing of them was sold

    /// Whether its items are named by what they sell and earn.
    [[nodiscard]] bool is_placed() const { return mix && lines.size() >= least_placed; }
};

/// The planes of a menu, in the order of its categories; what is in none comes last. Only those with items.
/// A menu without categories is one plane.
/// Source   Dittmer and Keefe, Principles of Food, Beverage, and Labor Cost Controls, 9th ed., ch. 11: a
///          worksheet over all kinds of items misleads, so each kind has one of its own
[[nodiscard]] std::vector<MenuPlane> menu_planes(MenuCost const& cost, MixOver over);

// ---------------------------------------------------------------------------------------------------

inline std::vector<MenuPlane> menu_planes(MenuCost const& cost, MixOver over) {
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
