/// Raising prices of a menu as it is asked for in words: what the menu as a whole is to reach, how far one price may
/// move, how many may, and which stay.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/price/reprice.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

/// What is wished for, in the words of whoever asked.
struct RepriceWish {
    std::string reach = {};                   ///< "margin 35 %", "food cost 30 %"
    std::string move = {};                    ///< "10 %"
    std::string at_most = {};                 ///< "3" prices; empty: any number
    std::vector<std::string> left_alone = {}; ///< items whose price stays
    bool below_first = false;                 ///< items below target are the first to change
};

/// The fewest prices to raise for what is wished, as a sheet.
/// Fails    on words that are none of these, items that the menu does not have, and where the menu cannot be
///          calculated or cannot reach it
[[nodiscard]] Result<Sheet> repricing_sheet(Costing const& costing, Menu const& menu,
                                            RepriceWish const& wish, Diagnostics& found);

/// "margin 35 %" or "food cost 30 %".
/// Fails    on anything else, and on a percentage that the one or the other cannot have
[[nodiscard]] Result<MenuAim> parse_aim(std::string_view text);

/// A whole number of prices, from 1 to 10,000.
/// Fails    on anything else
[[nodiscard]] Result<std::size_t> parse_count(std::string_view text);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/reprice.ipp>
#endif
