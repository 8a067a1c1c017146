/// A menu: what is offered to everybody at a set price, what the prices are to reach, and what was sold.
#pragma once

#include <groat/model/policy.hpp>
#include <groat/model/reference.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// Items that stand together on the menu, and may have a target of their own.
struct MenuCategory {
    std::string name;
    PricePolicy price = {};
    Span origin = {};
};

struct MenuItem {
    Reference item;           ///< a formula
    Reference sale_unit = {}; ///< one of the formula's; not given: its first, else by the piece
    std::string name = {};    ///< on the menu; empty: that of the formula
    Reference category = {};
    std::optional<Money> price = {}; ///< the price now, on the menu's side of tax; absent: none yet
    PricePolicy target = {};
    Reference tax = {};               ///< not given: as the formula says; `none`: no tax
    std::optional<Integer> sold = {}; ///< sale units in the period
    std::string counted = {};         ///< "4 dozen", where they were counted in such a unit
    Span origin = {};
};

/// A part of what is paid, and how.
struct PaidPart {
    Reference how; ///< one of the shop's fees; `none` or `cash`: without fee
    Share share;
};

/// A policy that is absent is taken from the next wider one: item, category, menu, then as for an order
/// line: sale unit, formula, shop. What the menu says goes before what the formula says.
struct Menu {
    std::string name;
    std::string period = {};
    std::optional<bool> is_tax_contained = {}; ///< in its prices; absent: as the shop's
    PricePolicy price = {};
    std::vector<PaidPart> paid_by = {}; ///< shares add up to all; none given: as the shop's
    /// Items that are paid together and share a fixed fee; absent: all of a standard run do.
    std::optional<Number> items_per_payment = {};
    std::vector<MenuCategory> categories = {};
    std::vector<MenuItem> items = {};
    std::optional<Money> fixed_costs = {}; ///< of the period
    Money wanted_profit = {};              ///< of the period, after tax on it
    Share tax_on_profit = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)

    /// Whether it says how many were sold. Then it says so for every item.
    [[nodiscard]] bool has_sales() const {
        return !items.empty() && items.front().sold.has_value();
    }
};

} // namespace groat
