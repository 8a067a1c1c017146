/// What the cost sheet of an item holds.
#pragma once

#include <groat/sheets/shape_shared.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace cost {

inline constexpr MemberShape item_members[] = {
    {"prices_on", a_day, "the day whose prices hold"},
    {"run", a_count, "pieces of the standard run that bears what is done once"},
    {"portion", some_grams, "scaling weight of a piece", sometimes},
    {"piece", some_grams, "finished weight of a piece", sometimes},
    {"target", some_words, "what the price is to reach: a margin of 40 %", sometimes},
    {"wanted", some_money, "the net price that the target takes, before price points", sometimes},
    {"price", some_money, "of a sale unit, on the side of tax that the shop shows", sometimes},
    {"net_price", some_money, "without tax, where the price contains it", sometimes},
    {"margin", a_percentage, "profit of the net price", sometimes},
    {"markup", a_percentage, "profit of cost and fee", sometimes},
    {"food_cost", a_percentage, "ingredients of the net price", sometimes},
    {"prime_cost", a_percentage, "ingredients and labour of the net price", sometimes},
    {"contribution", some_money, "net price less variable cost and fee", sometimes},
};
inline constexpr SectionShape item =
    some_facts("item", "The item and its price. Of an item without a price nothing is said of one.",
               item_members);
inline constexpr SectionShape run_remark =
    some_remarks("run_remark", "That no standard run is stated.");
inline constexpr MemberShape by_name_members[] = {
    {"part", some_words, "what it goes to"},
    {"amount", some_money, "of a piece; an ingredient only as far as it is eaten"},
    {"share", a_percentage, "of the price, or of the cost", sometimes},
};
inline constexpr SectionShape by_name = a_table(
    "by_name",
    "Where the price of a piece goes, or of a sale unit of what is made by mass; what it costs where there is no price.",
    by_name_members,
    RowShape{lines_and_total,
             a_row_name("an ingredient's name, 'other ingredients', 'lost', or as in 'costs'")});
inline constexpr SectionShape costs =
    a_table("costs", "Where the price goes, or what it costs where there is none.",
            shared::makeup_members, shared::makeup_rows);
inline constexpr SectionShape run_fit = some_remarks(
    "run_fit", "Batches, mixes and oven loads that the run does not fill, and the runs that do.");
inline constexpr SectionShape leftover =
    some_remarks("leftover", "What is left over of each formula and charged here.");
inline constexpr SheetShape::Section sections[] = {
    {&item},
    {&run_remark, sometimes},
    {&by_name},
    {&costs},
    {&shared::yield_loss},
    {&shared::formulas},
    {&run_fit, sometimes},
    {&shared::ingredients},
    {&shared::supplies},
    {&shared::labour},
    {&shared::ovens},
    {&shared::overhead},
    {&shared::formula_costs},
    {&leftover, sometimes},
    {&shared::purchases},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{
    "cost_sheet",
    "cost",
    "maker",
    "Cost of an item",
    "What an item costs by category, with every loss, and what its price earns.",
    sections};

} // namespace cost

} // namespace groat::sheet_shapes
