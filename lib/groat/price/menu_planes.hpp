/// Which items of a menu are judged against each other: those of one category, since a mix over unlike things
/// (coffee against cakes) says nothing of either; or, where that is wanted, all of the menu. Each item stands
/// in exactly one plane.
#pragma once

#include <groat/price/menu.hpp>

#include <optional>
#include <string>
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

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/menu_planes.ipp>
#endif
