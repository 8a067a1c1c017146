/// Sections that several sheets hold.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace shared {

/// What a target asks for.
inline constexpr std::string_view aims[] = {"margin",     "markup",       "food_cost",
                                            "prime_cost", "contribution", "price"};

inline constexpr MemberShape makeup_members[] = {
    {"category", some_words, "the category of cost, or what it adds up to"},
    {"piece", some_money, "of a piece", sometimes},
    {"unit", some_money, "of a sale unit", sometimes},
    {"all", some_money, "of all that is made"},
};
inline constexpr std::string_view makeup_keys[] = {
    "ingredients", "consumables", "packaging", "labour", "energy", "overhead",
    "delivery",    "cost",        "fee",       "profit", "net"};
inline constexpr RowShape makeup_rows{lines_and_total, one_key_of(makeup_keys)};
inline constexpr MemberShape yield_loss_members[] = {
    {"part", some_words, "what became of it"},
    {"cost", some_money, "its cost"},
    {"share", a_percentage, "of the cost of ingredients"},
};
inline constexpr std::string_view yield_loss_keys[] = {"in_the_piece", "trim", "process",
                                                       "rounding", "total"};
inline constexpr SectionShape yield_loss =
    a_table("yield_loss", "The cost of ingredients as what is eaten and what is lost on the way.",
            yield_loss_members, RowShape{lines_and_total, one_key_of(yield_loss_keys)});
inline constexpr MemberShape formulas_members[] = {
    {"formula", some_words, "its name"},
    {"demand", an_amount, "what is wanted of it"},
    {"started", a_count | none, "pieces to begin with"},
    {"takes", a_count | none, "batches that it takes; none of what is taken from what is kept"},
    {"made", a_count | none, "batches made"},
    {"mixes", a_count | none, "turns of the mixer"},
    {"loads", a_count | none, "oven loads"},
    {"leftover", an_amount | none, "what is left over"},
};
inline constexpr SectionShape formulas = a_table(
    "formulas", "What is made of each formula, from what is sold down to what is mixed first.",
    formulas_members, RowShape{only_lines, a_row_name("the formula's name")});
inline constexpr MemberShape ingredients_members[] = {
    {"ingredient", some_words, "its name"},
    {"usable", an_amount | none, "what goes in"},
    {"bought", an_amount | none, "what is bought for it"},
    {"unit_cost", some_money | none, "a kilogram (or `per`) as bought"},
    {"usable_cost", some_money | none, "a usable kilogram (or `per`)"},
    {"per", some_words | none, "what the prices are for: kg, L or each, where not all are by mass",
     sometimes},
    {"cost", some_money, "its cost"},
};
inline constexpr SectionShape ingredients = a_table(
    "ingredients",
    "What goes in of each ingredient and what it costs, as this order's share of what is made together or kept.",
    ingredients_members, RowShape{lines_and_total, a_row_name("the ingredient's name, or total")});
inline constexpr MemberShape supplies_members[] = {
    {"supply", some_words, "its name"},
    {"used", a_count | none, "how many"},
    {"unit_cost", some_money | none, "one of them"},
    {"cost", some_money, "its cost"},
};
inline constexpr SectionShape supplies =
    a_table("supplies", "Packaging and consumables.", supplies_members,
            RowShape{lines_and_total, a_row_name("the supply's name, or total")});
inline constexpr MemberShape labour_members[] = {
    {"task", some_words, "what is done"},
    {"where", some_words | none, "for which formula, sale unit or order"},
    {"role", some_words | none, "who does it; nobody where time passes by itself"},
    {"count", a_count | none, "how often"},
    {"minutes", some_minutes, "all times together"},
    {"cost", some_money, "with on-cost"},
};
inline constexpr std::string_view labour_keys[] = {"total"};
inline constexpr SectionShape labour =
    a_table("labour", "Who does what for how long.", labour_members,
            RowShape{lines_and_total, sometimes_there(one_key_of(labour_keys))});
inline constexpr MemberShape ovens_members[] = {
    {"oven", some_words, "its name"},           {"loads", a_count | none, "loads"},
    {"minutes", some_minutes | none, "baking"}, {"preheat", some_minutes | none, "preheating"},
    {"energy", some_energy | none, "energy"},   {"cost", some_money, "of the energy"},
};
inline constexpr SectionShape ovens =
    a_table("ovens", "What the ovens take.", ovens_members,
            RowShape{lines_and_total, a_row_name("the oven's name, or total")});
inline constexpr MemberShape overhead_members[] = {
    {"overhead", some_words, "its name"},
    {"driver", some_words | none, "what it is charged by"},
    {"rate", some_money | a_percentage | none, "for one, or the share of a cost"},
    {"quantity", a_count | some_money | none,
     "so many of the driver, or the cost it is a share of"},
    {"cost", some_money, "what falls on this"},
};
inline constexpr SectionShape overhead =
    a_table("overhead", "Overhead, each by its driver.", overhead_members,
            RowShape{lines_and_total, a_row_name("the overhead's name, or total")});
inline constexpr MemberShape formula_costs_members[] = {
    {"formula", some_words, "its name"},
    {"ingredients", some_money, "ingredients, trimming and losses included"},
    {"consumables", some_money, "what is used up in making: liners, gloves"},
    {"labour", some_money, "labour"},
    {"energy", some_money, "energy"},
    {"total", some_money, "in all"},
};
inline constexpr SectionShape formula_costs =
    a_table("formula_costs", "What each formula costs, with all that goes into it.",
            formula_costs_members, RowShape{only_lines, a_row_name("the formula's name")});
inline constexpr MemberShape purchases_members[] = {
    {"item", some_words, "its name"},
    {"offer", some_words | none, "supplier, pack, price and why this one"},
    {"packs", a_count | none, "whole packs"},
    {"outlay", some_money, "for these packs"},
    {"supplier", some_words, "whose offer it is", sometimes},
    {"pack", some_words, "its pack, as the books write it", sometimes},
};
inline constexpr SectionShape purchases = a_table(
    "purchases", "Which offer each thing is costed at, and what whole packs would cost.",
    purchases_members,
    RowShape{lines_and_total, a_row_name("the name of the ingredient or supply, or total")});
inline constexpr MemberShape costed_and_paid_members[] = {
    {"step", some_words, "in words"},
    {"amount", some_money, "added; may be negative"},
};
inline constexpr std::string_view costed_and_paid_keys[] = {
    "quotes",  "prices", "run",    "whole_packs", "kept",     "together", "own_goods",
    "metered", "shelf",  "offers", "left_over",   "delivery", "deposit",  "total"};
inline constexpr SectionShape costed_and_paid =
    a_table("costed", "From what the orders were costed at to what is paid; the steps add up.",
            costed_and_paid_members, RowShape{lines_and_total, one_key_of(costed_and_paid_keys)});
inline constexpr SectionShape cautions =
    not_empty(some_remarks("cautions", "What the books cannot know and the law may ask."));

} // namespace shared

} // namespace groat::sheet_shapes
