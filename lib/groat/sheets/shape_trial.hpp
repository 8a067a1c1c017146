/// What the sheets of trials hold.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace whatif {

inline constexpr MemberShape trial_members[] = {
    {"date", a_day, "the day whose prices hold"},
    {"currency", a_currency, "that of the shop, as USD"},
};
inline constexpr SectionShape trial = some_facts("trial", "The trial.", trial_members);
inline constexpr SectionShape changes = some_remarks("changes", "What is changed.");
inline constexpr MemberShape lines_members[] = {
    {"item", some_words, "what is sold"},
    {"before", some_money, "its cost before"},
    {"after", some_money, "its cost after"},
    {"more", some_money, "the change, shown with its sign"},
    {"price", some_money, "its price"},
    {"margin_before", a_percentage | none, "before"},
    {"margin_after", a_percentage | none, "after"},
    {"restoring", some_money | none, "the price that meets the target again, or keeps the margin"},
    {"formula", some_words, "the name of the formula that is sold"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
    {"marks", some_names, "what stands out: loses"},
};
inline constexpr SectionShape lines = a_table("lines", "Each, at the price it has.", lines_members,
                                              RowShape{only_lines, a_row_number()});
inline constexpr MemberShape cost_members[] = {
    {"category", some_words, "the category of cost"},
    {"before", some_money, "before"},
    {"after", some_money, "after"},
    {"more", some_money, "the change, shown with its sign"},
};
inline constexpr std::string_view cost_keys[] = {
    "ingredients", "consumables", "packaging", "labour", "energy", "overhead", "delivery", "total"};
inline constexpr SectionShape cost = a_table("cost", "All of it by category.", cost_members,
                                             RowShape{lines_and_total, one_key_of(cost_keys)});
inline constexpr SectionShape no_effect =
    some_remarks("no_effect", "That nothing of it is used here.");
inline constexpr SectionShape remarks = some_remarks("remarks", "What stays as it is.");
inline constexpr SheetShape::Section sections[] = {
    {&trial}, {&changes}, {&lines}, {&cost}, {&no_effect, sometimes}, {&remarks},
};
inline constexpr SheetShape sheet{"whatif_sheet",
                                  "whatif",
                                  "maker",
                                  "What if",
                                  "What changes of the books do to an order, a menu or an item.",
                                  sections};

} // namespace whatif

namespace sensitivity {

inline constexpr SectionShape trial = some_facts("trial", "The trial.", whatif::trial_members);
inline constexpr MemberShape drivers_members[] = {
    {"driver", some_words, "what becomes a tenth more"},
    {"more", some_money, "added to the cost"},
    {"share", a_percentage, "of the cost"},
};
inline constexpr SectionShape drivers =
    a_table("drivers", "The twenty that move it most.", drivers_members,
            RowShape{only_lines, a_row_name("what it is")});
inline constexpr SheetShape::Section sections[] = {
    {&trial},
    {&drivers},
};
inline constexpr SheetShape sheet{"sensitivity_sheet",
                                  "sensitivity",
                                  "maker",
                                  "What moves the cost",
                                  "What a tenth more of each price, wage or loss adds to a cost.",
                                  sections};

} // namespace sensitivity

namespace price_limit {

inline constexpr SectionShape trial = some_facts("trial", "The trial.", whatif::trial_members);
inline constexpr MemberShape limits_members[] = {
    {"item", some_words, "what is sold"},
    {"now", some_money, "its price now"},
    {"limit", some_money | some_words,
     "the price at which the target is missed; words where there is none"},
    {"change", a_percentage | none, "from now to the limit"},
    {"formula", some_words, "the name of the formula that is sold"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
};
inline constexpr SectionShape limits =
    a_table("limits", "Of each item, a kilogram or piece of the ingredient.", limits_members,
            RowShape{only_lines, a_row_number()});
inline constexpr SheetShape::Section sections[] = {
    {&trial},
    {&limits},
};
inline constexpr SheetShape sheet{"price_limit_sheet",
                                  "price_limit",
                                  "maker",
                                  "How dear it may become",
                                  "How dear an ingredient may become before a target is missed.",
                                  sections};

} // namespace price_limit

namespace costs_between {

inline constexpr MemberShape range_members[] = {
    {"from", a_day, "first day"},
    {"to", a_day, "last day"},
    {"currency", a_currency, "that of the shop, as USD"},
    {"lowest", some_money, "cost"},
    {"highest", some_money, "cost"},
};
inline constexpr SectionShape range = some_facts("range", "The days.", range_members);
inline constexpr MemberShape costs_members[] = {
    {"since", a_day, "the day"},
    {"cost", some_money, "from that day on"},
};
inline constexpr SectionShape costs = a_table("costs", "The cost since each change.", costs_members,
                                              RowShape{only_lines, a_row_name("the day")});
inline constexpr SheetShape::Section sections[] = {
    {&range},
    {&costs},
};
inline constexpr SheetShape sheet{
    "costs_between_sheet",
    "costs_between",
    "maker",
    "Cost from day to day",
    "What an order, a menu or an item cost at each change of a price list.",
    sections};

} // namespace costs_between

} // namespace groat::sheet_shapes
