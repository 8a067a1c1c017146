/// Which items of a menu sell and which earn, each against the others. Both lines follow from the sales
/// themselves, so there is always something above and below: an item is judged against this menu only.
#pragma once

#include <groat/measure/money.hpp>

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace groat {

enum class MenuGroup { sells_and_earns, sells, earns, neither };
inline constexpr std::size_t menu_group_count = 4;
inline constexpr std::array<std::string_view, menu_group_count> menu_group_words = {
    "sells and earns", "sells, earns little", "earns, sells little", "neither"};
/// What Kasavana and Smith call them.
inline constexpr std::array<std::string_view, menu_group_count> textbook_group_words = {
    "stars", "plowhorses", "puzzles", "dogs"};

/// What was sold of one item.
struct ItemSales {
    Number units;
    Money contribution; ///< of one unit
};

struct MixedItem {
    Number share; ///< of all units sold
    bool sells = false;
    bool earns = false;

    [[nodiscard]] MenuGroup group() const;
};

struct MenuMix {
    Number units;            ///< sold of all
    Number popularity_line;  ///< a share of the units
    Money contribution_line; ///< of one unit
    std::vector<MixedItem> items;
};

/// The part of an equal share from which on an item counts as one that sells.
inline Number const popular_from = Number(7) / 10;

/// Sorts the items of a mix.
///
///     sells   units / all units  >=  70 % * 1 / number of items
///     earns   contribution       >=  sum(units * contribution) / all units, and not below 0
///
/// Items of which none were sold count among the number of items. A tie counts as high on both lines: an
/// item at the line is not called poor, and items that are all alike all sell and earn. Nothing where
/// nothing was sold.
/// Source   M. L. Kasavana and D. I. Smith, Menu Engineering, 1982; formulas after Dittmer and Keefe,
///          Principles of Food, Beverage, and Labor Cost Controls, 9th ed., ch. 11, where ties are not
///          defined and a contribution is price less food cost
[[nodiscard]] std::optional<MenuMix> menu_mix(std::vector<ItemSales> const& items);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/menu_mix.ipp>
#endif
