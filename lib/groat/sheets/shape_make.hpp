/// What the sheet of a bake day holds.
#pragma once

#include <groat/sheets/shape_shared.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace make {

inline constexpr MemberShape orders_members[] = {
    {"order", some_words, "its number"},
    {"client", some_words, "for whom; may be empty"},
    {"due", a_day | none, "when it is wanted"},
    {"notes", some_words, "what to mind; may be empty", sometimes},
};
inline constexpr SectionShape orders =
    a_table("orders", "The orders made together.", orders_members,
            RowShape{only_lines, a_row_name("the order's number")});
inline constexpr MemberShape from_stock_members[] = {
    {"item", some_words, "the same"},
    {"wanted", an_amount, "what is wanted"},
    {"taken", an_amount, "what is taken from stock"},
    {"to_make", an_amount, "what is still to be made"},
};
inline constexpr SectionShape from_stock =
    a_table("from_stock", "Own goods that are there already and taken first.", from_stock_members,
            RowShape{only_lines, a_row_name("the formula's name, and how it is packed")});
inline constexpr SectionShape nothing = some_remarks("nothing", "That all of it is there.");
inline constexpr MemberShape works_members[] = {
    {"formula", some_words, "its name, with a number"}, {"wanted", an_amount, "what is wanted"},
    {"start", a_count | none, "pieces to begin with"},  {"batches", a_count, "batches made"},
    {"mixes", a_count | none, "turns of the mixer"},    {"left", an_amount | none, "left over"},
};
inline constexpr SectionShape works =
    a_table("works", "What is made, in this order.", works_members,
            RowShape{only_lines, a_row_name("the formula's name")});
inline constexpr MemberShape making_members[] = {
    {"mixes", some_words, "in which mixes", sometimes},
    {"pieces", some_words, "how many pieces, for how many good ones", sometimes},
    {"scale", some_grams, "scaling weight of a piece", sometimes},
    {"finished", some_grams, "finished weight of a piece", sometimes},
    {"gives", some_grams, "what it gives, where it is made by mass", sometimes},
    {"oven", some_words, "which oven, which loads", sometimes},
    {"left", some_words, "left over", sometimes},
    {"keep", some_words, "how to keep it", sometimes},
};
inline constexpr SectionShape making =
    one_for_each("the formula's name", some_facts("making", "How each is made.", making_members));
inline constexpr MemberShape weighing_members[] = {
    {"line", some_words, "its name"},
    {"mix", an_amount | none, "for each mix, or the first ones", sometimes},
    {"mix_in_hand", some_words | none, "counted, or in cups and spoons", sometimes},
    {"last_mix", an_amount | none, "for the last mixes", sometimes},
    {"last_mix_in_hand", some_words | none, "counted, or in cups and spoons", sometimes},
    {"piece", an_amount | none, "for one that is put together", sometimes},
    {"piece_in_hand", some_words | none, "counted, or in cups and spoons", sometimes},
    {"all", an_amount | none, "for everything"},
    {"all_in_hand", some_words | none, "counted, or in cups and spoons", sometimes},
    {"percent", a_percentage, "baker's percentage: of the base that the formula names", sometimes},
};
inline constexpr SectionShape weighing =
    one_for_each("the formula's name",
                 a_table("weighing", "What is weighed for each.", weighing_members,
                         RowShape{lines_and_total,
                                  a_row_name("the name of the ingredient or formula, or total")}));
inline constexpr MemberShape ovens_members[] = {
    {"for", some_words, "which oven, and for what"},
    {"holds", an_amount | none, "what a load holds"},
    {"loads", a_count | none, "loads"},
    {"each", some_minutes | none, "minutes a load"},
    {"minutes", some_minutes, "in all"},
};
inline constexpr SectionShape ovens = a_table(
    "ovens", "Ovens in minutes.", ovens_members,
    RowShape{lines_and_total,
             a_row_name("the formula's name, 'preheat' and the oven's name, or the oven's name")});
inline constexpr MemberShape labour_members[] = {
    {"task", some_words, "what is done"},
    {"where", some_words, "for what"},
    {"role", some_words, "who does it; nobody where it passes by itself"},
    {"count", a_count, "how often"},
    {"minutes", some_minutes, "all times together"},
};
inline constexpr SectionShape labour =
    a_table("labour", "Tasks.", labour_members, RowShape{only_lines});
inline constexpr MemberShape hours_members[] = {
    {"role", some_words, "its name"},
    {"minutes", some_minutes, "in minutes"},
    {"hours", some_hours, "in hours"},
};
inline constexpr SectionShape hours =
    a_table("hours", "The time of each role.", hours_members,
            RowShape{lines_and_total, a_row_name("the role's name, or total")});
inline constexpr MemberShape store_members[] = {
    {"ingredient", some_words, "its name"},
    {"usable", an_amount, "what goes in"},
    {"bought", an_amount, "what to take, before trimming"},
    {"count", some_words | none, "counted"},
    {"packs", some_words, "in packs"},
};
inline constexpr SectionShape store =
    a_table("store", "What is taken from the store.", store_members,
            RowShape{only_lines, a_row_name("the ingredient's name")});
inline constexpr MemberShape supplies_members[] = {
    {"supply", some_words, "its name"},
    {"count", a_count, "how many"},
    {"packs", some_words, "in packs"},
};
inline constexpr SectionShape supplies =
    a_table("supplies", "Supplies.", supplies_members,
            RowShape{only_lines, a_row_name("the supply's name")});
inline constexpr MemberShape packing_members[] = {
    {"item", some_words, "what is packed"},
    {"count", a_count, "sale units"},
    {"with", some_words | none, "with which supplies"},
    {"order", some_words, "for which order"},
    {"ready", a_count, "sale units that are packed already", sometimes},
    {"formula", some_words, "the name of the formula that is sold"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
};
inline constexpr SectionShape packing =
    a_table("packing", "What is packed for which order.", packing_members,
            RowShape{only_lines, a_row_name("the order's number and the item")});
inline constexpr SheetShape::Section sections[] = {
    {&orders},           {&from_stock, sometimes}, {&nothing, sometimes},
    {&works, sometimes}, {&making, sometimes},     {&weighing, sometimes},
    {&ovens, sometimes}, {&labour, sometimes},     {&hours, sometimes},
    {&store, sometimes}, {&supplies, sometimes},   {&packing},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{"make_sheet",
                                  "make",
                                  "maker",
                                  "Production sheet",
                                  "What to weigh, bake and pack for orders. No money stands on it.",
                                  sections};

} // namespace make

} // namespace groat::sheet_shapes
