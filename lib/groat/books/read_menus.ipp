#pragma once

#include <groat/books/read_menus.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/books/read_common.hpp>

#include <optional>
#include <utility>
#include <variant>
#include <vector>

namespace groat {

namespace read_menus_detail {

/// A policy whose target is solved for. A menu's price is `price` of an item, and no target.
inline PricePolicy read_target_policy(Node const* node, Reading const& reading) {
    PricePolicy policy = read_price_policy(node, reading);
    if (policy.target && std::holds_alternative<GivenPrice>(*policy.target)) {
        reading.found.error(node->where, "given-as-target", "a given price is no target of a menu",
                            "write what it is to reach, as {margin: 60 %}; the price now is "
                            "'price: 5.50' of an item");
        policy.target.reset();
    }
    return policy;
}

inline MenuItem read_item(Node const& node, bool& has_unread_sales, Reading const& reading) {
    Fields<shapes::menu_item> fields(node, reading.found);
    MenuItem item;
    item.origin = fields.where();
    fields.read_into(item, reading);
    item.target = read_target_policy(fields.at("target"), reading);
    Node const* const sold = fields.at("sold");
    has_unread_sales = has_unread_sales || (sold != nullptr && !item.sold);
    item.counted = counted_in(sold, reading);
    fields.close();
    return item;
}

/// Sales that are counted for some items only say nothing about the mix.
inline void check_sales(Menu const& menu, Reading const& reading) {
    MenuItem const* counted = nullptr;
    for (MenuItem const& item : menu.items)
        if (item.sold) counted = &item;
    if (counted == nullptr) return;
    for (MenuItem const& item : menu.items)
        if (!item.sold)
            reading.found.add(
                {Severity::error,
                 "missing-sold",
                 fmt::format("it is not said how many of '{}' were sold", item.item.name),
                 item.origin,
                 {{"of others it is, as here", counted->origin}},
                 "add 'sold: 40', or 'sold: 0' if there were none"});
}

} // namespace read_menus_detail

GROAT_INLINE bool read_value(MenuCategory& category, Node const& node, KeyShape const&,
                             Reading const& reading) {
    bool const says_nothing = node.is_mapping() && node.items.empty();
    if (!says_nothing) category.price = read_menus_detail::read_target_policy(&node, reading);
    return true;
}

GROAT_INLINE bool read_value(std::vector<PaidPart>& parts, Node const& node, KeyShape const&,
                             Reading const& reading) {
    if (!node.is_mapping()) {
        Reference const how = read_reference(&node, reading);
        if (how.is_given()) parts = {{how, Share::of(1).value()}};
        return how.is_given();
    }
    std::size_t const errors = reading.found.errors_met();
    Number sum;
    each_named(&node, "a way of paying", reading, [&](Key const& key, Node const& each) {
        if (auto share = read_rate<Share>(&each, reading)) {
            sum += share->value();
            parts.push_back({{key.text, key.where}, *std::move(share)});
        }
    });
    if (sum != 1 && reading.found.errors_met() == errors)
        reading.found.error(node.where, "shares-not-all",
                            fmt::format("the shares of what is paid add up to {} %, not to 100 %",
                                        decimal_at_most(sum * 100, 2)),
                            "write how all of it is paid, as {card: 60 %, cash: 40 %}");
    return true;
}

GROAT_INLINE Menu read_menu(Node const& node, Reading const& reading) {
    namespace parts = read_menus_detail;
    Fields<shapes::menu> fields(node, reading.found);
    Menu menu;
    menu.origin = fields.origin("menu");
    fields.read_into(menu, reading);
    menu.price = parts::read_target_policy(fields.at("price"), reading);
    Node const* const items = fields.at("items");
    bool has_unread_sales = false;
    for (Node const& each : read_list(items, "a list of items", reading)) {
        MenuItem item = parts::read_item(each, has_unread_sales, reading);
        if (item.item.is_given()) menu.items.push_back(std::move(item));
    }
    if (items != nullptr && items->is_sequence() && items->items.empty())
        reading.found.error(items->where, "missing-value", "nothing is on this menu",
                            "write a line '- {item: ..., price: 5.50}' for each item");
    if (!has_unread_sales) parts::check_sales(menu, reading);
    Node const* const costs = fields.at("fixed costs");
    each_named(costs, "a mapping of fixed costs", reading, [&](auto&, auto& each) {
        if (auto amount = read_money(&each, reading))
            menu.fixed_costs = menu.fixed_costs.value_or(Money()) + *amount;
    });
    Node const* const profit = fields.at("wanted profit");
    if (menu.tax_on_profit.value() == 1)
        reading.found.error(fields.at("tax on profit")->where, "rate-out-of-range",
                            "a tax of 100 % leaves nothing of any profit",
                            "write the part of a profit that is taken, such as 20 %");
    if ((costs != nullptr || profit != nullptr) && !menu.items.empty() && !menu.has_sales())
        reading.found.warn(costs != nullptr ? fields.place_of("fixed costs")
                                            : fields.place_of("wanted profit"),
                           "no-sales", "break-even takes a mix of sales, and none is stated",
                           "add 'sold: 120' to each item");
    fields.close();
    return menu;
}

} // namespace groat
