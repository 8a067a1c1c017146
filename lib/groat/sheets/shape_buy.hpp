/// What the sheet of buying and the order to a supplier hold.
#pragma once

#include <groat/sheets/shape_shared.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace buy {

inline constexpr MemberShape purchase_members[] = {
    {"orders", some_words, "the orders bought for"},
    {"date", a_day, "the day whose prices hold"},
    {"stock", a_day, "when the shelf was counted", sometimes},
    {"currency", a_currency, "that of the shop, as USD"},
    {"total", some_money, "to be paid"},
    {"least", some_words, "whether it could be less"},
    {"bound", some_money, "what it can never be less than, where it could be less", sometimes},
};
inline constexpr SectionShape purchase = some_facts("purchase", "The purchase.", purchase_members);
inline constexpr MemberShape ahead_members[] = {
    {"listed_worth", some_money, "worth of the leftovers of the purchase that is listed"},
    {"listed_net", some_money, "its outlay less that"},
    {"total", some_money, "outlay, buying ahead", sometimes},
    {"more", some_money, "more today than as listed", sometimes},
    {"worth", some_money, "worth of its leftovers", sometimes},
    {"net", some_money, "outlay less that worth", sometimes},
    {"least", some_words, "whether it could be less"},
};
inline constexpr SectionShape ahead =
    some_facts("ahead", "The least outlay less the worth of what its leftovers will be used for.",
               ahead_members);
inline constexpr MemberShape ahead_packs_members[] = {
    {"item", some_words, "what is bought"},      {"supplier", some_words | none, "from whom"},
    {"pack", some_words | none, "its pack"},     {"packs", a_count | none, "how many"},
    {"amount", some_money, "packs times price"},
};
inline constexpr std::string_view ahead_packs_keys[] = {"total"};
inline constexpr SectionShape ahead_packs =
    a_table("ahead_packs", "What to buy for that, where it is not what is listed.",
            ahead_packs_members, RowShape{lines_and_total, a_row_number(ahead_packs_keys)});
inline constexpr MemberShape ahead_left_members[] = {
    {"item", some_words, "its name"},
    {"left", an_amount | none, "left over"},
    {"used", an_amount | none, "will be used"},
    {"worth", some_money, "worth of that"},
};
inline constexpr SectionShape ahead_left =
    a_table("ahead_left", "What will be used of what is left over then.", ahead_left_members,
            RowShape{lines_and_total, a_row_name("the item's name, or total")});
inline constexpr SectionShape nothing = some_remarks("nothing", "That the shelf holds all of it.");
inline constexpr MemberShape ways_members[] = {
    {"way", some_words, "how"},
    {"total", some_money, "outlay"},
    {"more", some_money, "more than the plan"},
};
inline constexpr std::string_view ways_keys[] = {"plan", "single", "ahead", "unit_price"};
inline constexpr SectionShape ways = a_table("ways", "The same bought otherwise.", ways_members,
                                             RowShape{only_lines, one_key_of(ways_keys)});
inline constexpr MemberShape baskets_members[] = {
    {"item", some_words, "what is bought"},      {"pack", some_words | none, "its pack"},
    {"packs", a_count | none, "how many"},       {"price", some_money | none, "of a pack"},
    {"amount", some_money, "packs times price"},
};
inline constexpr std::string_view baskets_keys[] = {"freight", "deposit", "delivery", "total"};
inline constexpr SectionShape baskets = one_for_each(
    "the supplier", a_table("baskets", "What to buy from each supplier.", baskets_members,
                            RowShape{lines_and_total, a_row_number(baskets_keys)}));
inline constexpr MemberShape days_members[] = {
    {"item", some_words, "what is bought"},
    {"from", a_day, "not before this day"},
    {"amount", an_amount, "so much of it"},
    {"until", a_day, "the day by which the last order that takes it is wanted"},
};
inline constexpr SectionShape days =
    not_empty(a_table("days", "When to buy what would spoil before it is used, part by part.",
                      days_members, RowShape{only_lines, a_row_number()}));
inline constexpr MemberShape left_members[] = {
    {"item", some_words, "its name"},
    {"to_buy", an_amount | none, "needed beyond the shelf"},
    {"bought", an_amount | none, "bought"},
    {"left", an_amount | none, "left over"},
    {"worth", some_money, "of what is left"},
    {"until", a_day | none, "good until", sometimes},
    {"spoils", an_amount | none, "what no other order takes while it is good", sometimes},
};
inline constexpr SectionShape left = a_table(
    "left", "What is left over of what is bought.", left_members,
    RowShape{lines_and_total, a_row_name("the name of the ingredient or supply, or total")});
inline constexpr MemberShape shelf_members[] = {
    {"item", some_words, "its name"},     {"needed", an_amount, "needed"},
    {"shelf", an_amount, "on the shelf"}, {"taken", an_amount, "taken from it"},
    {"stays", an_amount, "what stays"},
};
inline constexpr SectionShape shelf =
    a_table("shelf", "What is taken from the shelf.", shelf_members,
            RowShape{only_lines, a_row_name("the name of the ingredient or supply")});
inline constexpr SectionShape notes =
    some_remarks("notes", "What to know before sending the lists.");
inline constexpr SheetShape::Section sections[] = {
    {&purchase},
    {&ahead, sometimes},
    {&ahead_packs, sometimes},
    {&ahead_left, sometimes},
    {&shared::costed_and_paid, sometimes},
    {&nothing, sometimes},
    {&ways, sometimes},
    {&baskets, sometimes},
    {&days, sometimes},
    {&left, sometimes},
    {&shelf, sometimes},
    {&notes, sometimes},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{
    "buy_sheet",
    "buy",
    "maker",
    "What to buy",
    "The cheapest packs for orders, from whom, and what is left of them.",
    sections};

} // namespace buy

namespace order {

inline constexpr MemberShape order_members[] = {
    {"date", a_day, "the day whose prices hold"},
    {"currency", a_currency, "that of the shop, as USD"},
};
inline constexpr SectionShape order = some_facts("order", "The order.", order_members);
inline constexpr MemberShape lines_members[] = {
    {"code", some_words, "the supplier's code for it", sometimes},
    {"item", some_words | none, "what is ordered"},
    {"pack", some_words | none, "its pack"},
    {"packs", a_count | none, "how many"},
    {"price", some_money | none, "of a pack, as listed"},
    {"amount", some_money, "packs times price"},
};
inline constexpr std::string_view lines_keys[] = {"total"};
inline constexpr SectionShape lines = a_table("lines", "What is ordered.", lines_members,
                                              RowShape{lines_and_total, a_row_number(lines_keys)});
inline constexpr SectionShape terms = some_remarks("terms", "On what terms.");
inline constexpr SheetShape::Section sections[] = {
    {&order},
    {&lines},
    {&terms},
};
inline constexpr SheetShape sheet{"order_sheet",
                                  "order",
                                  "supplier",
                                  "Order to a supplier",
                                  "The list that goes to one supplier, at their listed prices.",
                                  sections};

} // namespace order

} // namespace groat::sheet_shapes
