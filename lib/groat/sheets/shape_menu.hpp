/// What the sheets of a menu hold.
#pragma once

#include <groat/sheets/shape_shared.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace menu {

inline constexpr MemberShape menu_members[] = {
    {"costs_on", a_day, "the day whose costs hold"},
    {"period", some_words, "when this was sold", sometimes},
    {"side", some_words, "the side of tax that prices are on"},
    {"paid_by", some_words, "how one pays", sometimes},
    {"items_per_payment", a_count, "items paid together", sometimes},
    {"items", a_count, "items on the menu"},
    {"units", a_count, "units sold", sometimes},
    {"sales", some_money, "without tax", sometimes},
    {"food_cost", a_percentage, "of the mix sold", sometimes},
    {"prime_cost", a_percentage, "of the mix sold", sometimes},
    {"margin", a_percentage, "of the mix sold", sometimes},
    {"contribution", some_money, "of an average unit", sometimes},
    {"per_labour_hour", some_money, "contribution of a labour hour", sometimes},
    {"per_oven_hour", some_money, "contribution of an oven hour", sometimes},
};
inline constexpr SectionShape menu =
    some_facts("menu", "The menu, and what was sold of it.", menu_members);
inline constexpr MemberShape prices_members[] = {
    {"item", some_words, "the item, with its number"},
    {"category", some_words, "its category; may be empty", sometimes},
    {"price", some_money | none, "now"},
    {"wanted", some_money | none, "what the target takes, on a price point"},
    {"gap", some_money | none, "price less the wanted one"},
    {"mark", some_words, "what stands out; may be empty"},
    {"formula", some_words, "the name of the formula that is sold"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
    {"marks", some_names,
     "what stands out: loses, loses_before_overhead, no_price_yet, below_target, wanted_misses_target"},
};
inline constexpr SectionShape prices =
    a_table("prices", "Prices now against those that the targets take.", prices_members,
            RowShape{only_lines, a_row_number()});
inline constexpr MemberShape earned_members[] = {
    {"item", some_words, "the item, with its number"},
    {"net_price", some_money, "without tax"},
    {"profit", some_money, "after all costs and the fee"},
    {"contribution", some_money, "after the variable costs and the fee"},
    {"margin", a_percentage | none, "profit of the net price"},
    {"food_cost", a_percentage | none, "ingredients of the net price"},
    {"prime_cost", a_percentage | none, "ingredients and labour of the net price"},
};
inline constexpr SectionShape earned = a_table("earned", "What each price earns.", earned_members,
                                               RowShape{only_lines, a_row_number()});
inline constexpr MemberShape costs_members[] = {
    {"item", some_words, "the item, with its number"},
    {"ingredients", some_money, "ingredients, trimming and losses included", sometimes},
    {"consumables", some_money, "what is used up in making: liners, gloves", sometimes},
    {"packaging", some_money, "packaging", sometimes},
    {"labour", some_money, "labour", sometimes},
    {"energy", some_money, "energy", sometimes},
    {"overhead", some_money, "overhead", sometimes},
    {"cost", some_money, "in all"},
};
inline constexpr SectionShape costs =
    a_table("costs", "What each costs, by the categories that cost anything here.", costs_members,
            RowShape{only_lines, a_row_number()});
inline constexpr SectionShape run_remark =
    some_remarks("run_remark", "Items without a standard run.");
inline constexpr MemberShape targets_members[] = {
    {"item", some_words, "the item, with its number"},
    {"target", some_words, "what its price is to reach"},
    {"wanted", some_money | none, "the net price it takes"},
    {"aim", one_of(shared::aims), "what is to be reached"},
    {"reach", a_percentage | some_money, "how much of it"},
};
inline constexpr SectionShape targets =
    a_table("targets", "What the targets take, before price points.", targets_members,
            RowShape{only_lines, a_row_number()});
inline constexpr MemberShape totals_members[] = {
    {"category", some_words, "its name"},
    {"units", a_count, "sold, or items"},
    {"sales", some_money, "without tax"},
    {"contribution", some_money, "after the variable costs and the fee"},
    {"profit", some_money, "after all costs and the fee"},
    {"margin", a_percentage | none, "profit of the sales"},
    {"food_cost", a_percentage | none, "ingredients of the sales"},
    {"prime_cost", a_percentage | none, "ingredients and labour of the sales"},
};
inline constexpr SectionShape totals =
    a_table("totals", "What was sold by category, or one of each where nothing was.",
            totals_members, RowShape{lines_and_total, a_row_name("the category's name, or total")});
inline constexpr MemberShape cost_totals_members[] = {
    {"category", some_words, "its name"},
    {"ingredients", some_money, "ingredients, trimming and losses included", sometimes},
    {"consumables", some_money, "what is used up in making: liners, gloves", sometimes},
    {"packaging", some_money, "packaging", sometimes},
    {"labour", some_money, "labour", sometimes},
    {"energy", some_money, "energy", sometimes},
    {"overhead", some_money, "overhead", sometimes},
    {"cost", some_money, "in all"},
    {"fee", some_money, "of payments", sometimes},
};
inline constexpr SectionShape cost_totals =
    a_table("cost_totals", "What that cost.", cost_totals_members,
            RowShape{lines_and_total, a_row_name("the category's name, or total")});
inline constexpr std::string_view mix_group_words[] = {"sells and earns", "sells, earns little",
                                                       "earns, sells little", "neither", ""};
inline constexpr MemberShape mix_members[] = {
    {"item", some_words, "the item with its number, or the category"},
    {"sold", a_count, "units sold"},
    {"share", a_percentage | none, "of all units sold, of its category where one is named"},
    {"contribution", some_money | none, "of a unit"},
    {"per_labour_hour", some_money | none, "contribution of a labour hour"},
    {"per_oven_hour", some_money | none, "contribution of an oven hour"},
    {"group", one_of(mix_group_words),
     "above or below the two lines; empty where it is listed only"},
};
inline constexpr SectionShape mix = a_table(
    "mix", "What sells and what earns, within each category or over the whole menu.", mix_members,
    RowShape{
        lines_and_subtotals,
        a_row_name("the item's number on the menu, or the name of a category, below its items")});
inline constexpr MemberShape mix_lines_members[] = {
    {"category", some_words, "its name"},
    {"items", a_count, "items in it"},
    {"sold", a_count, "units sold of it"},
    {"popularity_line", a_percentage, "sells from this share of its units on"},
    {"contribution_line", some_money, "earns from this contribution on"},
};
inline constexpr SectionShape mix_lines =
    a_table("mix_lines", "Where the lines stand in each category that is placed.",
            mix_lines_members, RowShape{only_lines, a_row_name("the category's name")});
inline constexpr MemberShape lines_members[] = {
    {"popularity_line", a_percentage, "sells from this share of all units on"},
    {"contribution_line", some_money, "earns from this contribution on"},
};
inline constexpr SectionShape lines =
    some_facts("lines", "Where the lines stand between the groups.", lines_members);
inline constexpr SectionShape sorting =
    some_remarks("sorting", "How items are sorted into groups.");
inline constexpr SectionShape advice =
    some_remarks("advice", "What one usually does about each group.");
inline constexpr MemberShape break_even_members[] = {
    {"contribution", some_money, "of these sales"},
    {"fixed_costs", some_money, "that the menu states"},
    {"profit", some_money, "before tax; below 0 is a loss"},
    {"tax", some_money, "on the profit", sometimes},
    {"profit_after_tax", some_money, "profit less tax", sometimes},
    {"average_contribution", some_money, "of an average sale"},
    {"ratio", a_percentage, "contribution of sales", sometimes},
    {"even_units", a_count, "units to break even; exactly, and shown as whole ones", sometimes},
    {"even_sales", some_money, "sales to break even", sometimes},
    {"safety", a_percentage, "of sales above break-even", sometimes},
    {"wanted_profit", some_money, "that the menu states", sometimes},
    {"wanted_before_tax", some_money, "the wanted profit before tax", sometimes},
    {"wanted_units", a_count, "units for the wanted profit", sometimes},
    {"wanted_sales", some_money, "sales for the wanted profit", sometimes},
    {"overhead", some_money, "in the costs, to compare"},
};
inline constexpr SectionShape break_even =
    some_facts("break_even", "Break-even.", break_even_members);
inline constexpr SectionShape break_even_remarks = some_remarks(
    "break_even_remarks", "What fixed costs are here, and why there may be no break-even.");
inline constexpr MemberShape break_even_items_members[] = {
    {"item", some_words, "the item, with its number"},
    {"sold", a_count, "units sold"},
    {"even", a_count, "to break even"},
    {"wanted", a_count, "for the wanted profit", sometimes},
};
inline constexpr std::string_view break_even_items_keys[] = {"total"};
inline constexpr SectionShape break_even_items = a_table(
    "break_even_items", "How many of each, if the mix stays as it is.", break_even_items_members,
    RowShape{lines_and_total, a_row_number(break_even_items_keys)});
inline constexpr SheetShape::Section sections[] = {
    {&menu},
    {&prices},
    {&earned},
    {&costs},
    {&run_remark, sometimes},
    {&targets, sometimes},
    {&totals},
    {&cost_totals},
    {&mix, sometimes},
    {&mix_lines, sometimes},
    {&lines, sometimes},
    {&sorting, sometimes},
    {&advice, sometimes},
    {&break_even, sometimes},
    {&break_even_remarks, sometimes},
    {&break_even_items, sometimes},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{
    "menu_sheet",
    "menu",
    "maker",
    "Menu",
    "Prices of a menu against its targets, what sells and earns, and break-even.",
    sections};

} // namespace menu

namespace reprice {

inline constexpr MemberShape aim_members[] = {
    {"costs_on", a_day, "the day whose costs hold"},
    {"wanted", a_percentage, "the margin or food cost aimed at"},
    {"before", a_percentage | none, "now"},
    {"after", a_percentage | none, "then"},
    {"limit", a_percentage, "how far one price may move"},
    {"at_most", a_count, "how many prices may change", sometimes},
    {"left_alone", some_words, "items whose price stays", sometimes},
    {"count", a_count, "prices to change"},
    {"change", some_money, "of them together", sometimes},
    {"profit", some_money, "more than now", sometimes},
};
inline constexpr SectionShape aim = some_facts("aim", "What is to be reached.", aim_members);
inline constexpr MemberShape rises_members[] = {
    {"item", some_words, "the item, with its number"},
    {"now", some_money | none, "its price"},
    {"price", some_money | none, "its new price"},
    {"change", some_money, "new less old"},
    {"share", a_percentage | none, "the change, of the price"},
    {"sold", a_count | none, "units sold, or one"},
    {"bears", a_count | none | a_percentage,
     "units that may go unsold before it earns no more than now; a share of them where none are stated"},
    {"profit", some_money, "more than now"},
};
inline constexpr std::string_view rises_keys[] = {"total"};
inline constexpr SectionShape rises =
    a_table("rises", "The prices; the key is the item's number on the menu.", rises_members,
            RowShape{lines_and_total, a_row_number(rises_keys)});
inline constexpr SectionShape remarks =
    some_remarks("remarks", "How sure it is, and what is taken for granted.");
inline constexpr SheetShape::Section sections[] = {
    {&aim},
    {&rises, sometimes},
    {&remarks},
};
inline constexpr SheetShape sheet{"reprice_sheet",
                                  "reprice",
                                  "maker",
                                  "Prices to change",
                                  "The fewest prices of a menu to raise for an aim.",
                                  sections};

} // namespace reprice

} // namespace groat::sheet_shapes
