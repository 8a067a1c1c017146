/// menus/*.yaml: what is offered at set prices, what these are to reach, and what was sold.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/model/menu.hpp>
#include <string_view>
#include <vector>

namespace groat {

/// A target of its own, or nothing said.
bool read_value(MenuCategory& category, Node const& node, KeyShape const& key,
                Reading const& reading);
/// One way of paying for all, or several with their shares.
bool read_value(std::vector<PaidPart>& parts, Node const& node, KeyShape const& key,
                Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr KeyShape menu_item_keys[] = {
    {"item", must, to<&MenuItem::item>(a_name), "lemon tart", "The formula that is offered."},
    {"as", may, to<&MenuItem::sale_unit>(a_name), "slice",
     "The sale unit; the first of the formula where none is said."},
    {"name", may, to<&MenuItem::name>(a_name), "Lemon tart", "What the menu calls it."},
    {"category", may, to<&MenuItem::category>(a_name), "tarts", "The category it stands in."},
    {"price", may, to<&MenuItem::price>(some_coins), "5.50", "What it costs now."},
    {"target", may, a_price, "{margin: 60 %}", "What its price is to reach."},
    {"tax", may, to<&MenuItem::tax>(a_name), "reduced",
     "Its rate of tax, by its name in shop.yaml."},
    {"sold", may, to<&MenuItem::sold>(a_count_or_none), "120", "How many were sold in the period."},
};
inline constexpr Synonym menu_item_synonyms[] = {
    {"dish", "item"},   {"product", "item"},  {"formula", "item"},
    {"recipe", "item"}, {"unit", "as"},       {"group", "category"},
    {"sales", "sold"},  {"quantity", "sold"}, {"count", "sold"}};
inline constexpr Shape menu_item{"item of a menu", "this item", menu_item_keys, menu_item_synonyms};
inline constexpr Value a_menu_item = mapping(menu_item);

inline constexpr KeyShape menu_keys[] = {
    {"menu", must, to<&Menu::name>(a_name), "winter counter", "What it is called."},
    {"period", may, to<&Menu::period>(a_name), "november 2026",
     "The time in which so much was sold."},
    {"prices", may, to<&Menu::is_tax_contained>(one_of(sides_of_tax)), "with",
     "Whether its prices are with tax or without, where that differs from the shop's."},
    {"price", may, a_price, "{margin: 60 %}", "What its prices are to reach."},
    {"paid by", may, to<&Menu::paid_by>(a_name | names_to("ways of paying", a_percentage)),
     "{card: 60 %, cash: 40 %}", "How it is paid: one way, or the share of each."},
    {"items per payment", may, to<&Menu::items_per_payment>(a_number), "2.5",
     "How many items one payment is for."},
    {"categories", may, to<&Menu::categories>(names_to("categories", a_price)),
     "{tarts: {margin: 65 %}}", "The categories, and what the prices in each are to reach."},
    {"items", must, list_of(a_menu_item), "[{item: lemon tart, price: 5.50}]", "What is offered."},
    {"fixed costs", may, names_to("costs", some_money), "{rent: 900.00}",
     "What the period costs whatever is sold."},
    {"wanted profit", may, to<&Menu::wanted_profit>(some_money), "400.00",
     "What is to be left of the period."},
    {"tax on profit", may, to<&Menu::tax_on_profit>(a_percentage), "20 %",
     "The part of a profit that is taken as tax."},
};
inline constexpr Synonym menu_synonyms[] = {{"name", "menu"},           {"dishes", "items"},
                                            {"products", "items"},      {"lines", "items"},
                                            {"target", "price"},        {"overhead", "fixed costs"},
                                            {"profit", "wanted profit"}};
inline constexpr Shape menu{"menu", "this menu", menu_keys, menu_synonyms};
inline constexpr Value a_menu = mapping(menu);

} // namespace groat::shapes

namespace groat {

/// The menu of a document; without a name where the document gives none.
[[nodiscard]] Menu read_menu(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_menus.ipp>
#endif
