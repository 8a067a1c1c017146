/// What the client's quote and its worksheet hold.
#pragma once

#include <groat/sheets/shape_shared.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace client_quote {

inline constexpr MemberShape order_members[] = {
    {"client", some_words, "for whom", sometimes},
    {"date", a_day, "when it was made"},
    {"due", a_day, "when it is wanted", sometimes},
    {"valid_until", a_day, "how long the prices hold", sometimes},
    {"currency", a_currency, "that of the shop, as USD"},
};
inline constexpr SectionShape order = some_facts("order", "The order.", order_members);
inline constexpr MemberShape lines_members[] = {
    {"item", some_words, "what is sold, or what is added up"},
    {"count", a_count | none, "sale units"},
    {"unit_price", some_money | none, "of a sale unit"},
    {"amount", some_money, "count times price; a discount is below 0"},
    {"formula", some_words | none, "the name of the formula that is sold; none of what is no item",
     sometimes},
    {"sold_as", some_words | none, "the way it is sold; none by the piece", sometimes},
};
inline constexpr std::string_view lines_keys[] = {"subtotal", "minimum", "rush",  "discount",
                                                  "delivery", "tax",     "total", "deposit",
                                                  "balance",  "cash"};
inline constexpr SectionShape lines =
    a_table("lines", "What is sold, and below it the totals; tax once for each rate.",
            lines_members, RowShape{all_rows, a_row_number(lines_keys)});
inline constexpr MemberShape tiers_members[] = {
    {"item", some_words, "what is sold"},
    {"from", a_count, "the first count that it holds for"},
    {"to", a_count, "the last count that it holds for"},
    {"price", some_money, "of a sale unit"},
    {"formula", some_words | none, "the name of the formula that is sold; none of what is no item"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
};
inline constexpr SectionShape tiers =
    a_table("tiers", "Prices that hold from a count on; the key is that of the line.",
            tiers_members, RowShape{only_lines, a_row_number()});
inline constexpr SectionShape tier_caps =
    some_remarks("tier_caps", "Which counts are asked no more than a larger one.");
inline constexpr MemberShape contains_members[] = {
    {"item", some_words, "what is sold"},
    {"words", some_words, "what it contains, how to keep it"},
    {"allergens", some_names, "those that it contains, as the books name them"},
};
inline constexpr SectionShape contains =
    a_table("contains", "Allergens and keeping of each item.", contains_members,
            RowShape{only_lines, a_row_name("the formula's name")});
inline constexpr SectionShape notes = some_remarks("notes", "What the order says in its notes.");
inline constexpr SectionShape terms = some_remarks("terms", "On what terms; may be none.");
inline constexpr SheetShape::Section sections[] = {
    {&order},
    {&lines},
    {&tiers, sometimes},
    {&tier_caps, sometimes},
    {&contains},
    {&notes, sometimes},
    {&terms},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{
    "client_quote_sheet",
    "quote",
    "client",
    "Quote for the client",
    "What is sold, for how much and on what terms. No cost, margin, supplier or loss stands on it.",
    sections};

} // namespace client_quote

namespace maker_quote {

inline constexpr MemberShape order_members[] = {
    {"id", some_words, "the order's number"},
    {"client", some_words, "for whom", sometimes},
    {"date", a_day, "when it was made"},
    {"due", a_day, "when it is wanted", sometimes},
    {"valid_until", a_day, "how long the prices hold", sometimes},
    {"currency", a_currency, "that of the shop, as USD"},
    {"prices_on", a_day, "the day whose prices hold"},
    {"validity", some_words, "that the prices hold until it is wanted, and no longer", sometimes},
};
inline constexpr SectionShape order = some_facts("order", "The order.", order_members);
inline constexpr MemberShape lines_members[] = {
    {"item", some_words, "what is sold"},
    {"count", a_count, "sale units"},
    {"cost", some_money, "of a sale unit"},
    {"price", some_money, "of a sale unit"},
    {"amount", some_money, "count times price"},
    {"margin", a_percentage | none, "profit of the net price; none at a price of 0"},
    {"food_cost", a_percentage | none, "ingredients of the net price; none at a price of 0"},
    {"formula", some_words | none, "the name of the formula that is sold; none of what is no item",
     sometimes},
    {"sold_as", some_words | none, "the way it is sold; none by the piece", sometimes},
};
inline constexpr SectionShape lines = a_table("lines", "What is sold, with cost and margin.",
                                              lines_members, RowShape{only_lines, a_row_number()});
inline constexpr MemberShape totals_members[] = {
    {"what", some_words, "what is added up"},
    {"amount", some_money, "a discount is below 0"},
};
inline constexpr std::string_view totals_keys[] = {"subtotal", "minimum", "rush",  "discount",
                                                   "delivery", "tax",     "total", "deposit",
                                                   "balance",  "cash"};
inline constexpr SectionShape totals =
    a_table("totals", "What the client pays; tax once for each rate.", totals_members,
            RowShape{subtotals_and_total, one_key_of(totals_keys)});
inline constexpr MemberShape after_discount_members[] = {
    {"item", some_words, "what is sold, or all of it"},
    {"margin", a_percentage | none, "before the discount"},
    {"after", a_percentage | none, "after it"},
    {"mark", some_words | none, "below cost, below target, or none"},
};
inline constexpr std::string_view after_discount_keys[] = {"goods"};
inline constexpr SectionShape after_discount = a_table(
    "after_discount", "What a discount leaves of each line and of all, where there is one.",
    after_discount_members, RowShape{lines_and_subtotals, a_row_number(after_discount_keys)});
inline constexpr MemberShape taxes_members[] = {
    {"rate", a_percentage | none, "of the total none"},
    {"taxable", some_money, "without the tax"},
    {"tax", some_money, "the tax of it"},
};
inline constexpr std::string_view taxes_keys[] = {"total"};
inline constexpr SectionShape taxes =
    a_table("taxes", "The taxable amount of each rate, where there are several.", taxes_members,
            RowShape{lines_and_total, a_row_number(taxes_keys)});
inline constexpr MemberShape delivery_members[] = {
    {"what", some_words, "how far was counted, and one way or both; whose time"},
    {"cost", some_money, "its cost"},
};
inline constexpr std::string_view delivery_keys[] = {"flat", "way", "time", "total"};
inline constexpr SectionShape delivery =
    a_table("delivery", "What the drive costs, where there is one.", delivery_members,
            RowShape{lines_and_total, one_key_of(delivery_keys)});
inline constexpr MemberShape result_members[] = {
    {"what", some_words, "revenue, fee, cost, profit, margin"},
    {"amount", some_money | a_percentage, "fee and cost are below 0; the margin is a percentage"},
};
inline constexpr std::string_view result_keys[] = {"revenue", "fee", "cost", "profit", "margin"};
inline constexpr SectionShape result = a_table("result", "What the order earns.", result_members,
                                               RowShape{lines_and_total, one_key_of(result_keys)});
inline constexpr MemberShape order_costs_members[] = {
    {"category", some_words, "the category of cost"},
    {"cost", some_money, "its cost"},
    {"share", a_percentage, "of the whole cost"},
};
inline constexpr std::string_view order_costs_keys[] = {"ingredients", "consumables", "packaging",
                                                        "labour",      "energy",      "overhead",
                                                        "delivery",    "other",       "cost"};
inline constexpr SectionShape order_costs =
    a_table("order_costs", "The whole order by category.", order_costs_members,
            RowShape{lines_and_total, one_key_of(order_costs_keys)});
inline constexpr MemberShape ways_members[] = {
    {"item", some_words, "what is sold"},
    {"way", some_words, "how it is costed"},
    {"cost", some_money, "of a sale unit"},
    {"price", some_money, "that it would take"},
    {"used", some_words | none, "'asked' where this is the price asked"},
};
inline constexpr SectionShape ways = not_empty(a_table(
    "ways",
    "Each line costed alone, made together with other orders where there are any, and in a usual run.",
    ways_members, RowShape{only_lines, a_row_number()}));
inline constexpr MemberShape line_prices_members[] = {
    {"target", some_words, "what the price is to reach: a margin of 40 %"},
    {"wanted", some_money, "the net price that the target takes, before price points", sometimes},
    {"price", some_money, "of a sale unit, on the side of tax that the shop shows"},
    {"net_price", some_money, "without tax, where the price contains it", sometimes},
    {"margin", a_percentage, "profit of the net price", sometimes},
    {"markup", a_percentage, "profit of cost and fee", sometimes},
    {"food_cost", a_percentage, "ingredients of the net price", sometimes},
    {"prime_cost", a_percentage, "ingredients and labour of the net price", sometimes},
    {"contribution", some_money, "net price less variable cost and fee"},
    {"amount", some_money, "of the line"},
    {"revenue", some_money, "the amount less its part of the tax printed, where prices contain it",
     sometimes},
    {"fixed_fee", some_money, "the line's share of the fixed fee of a payment"},
};
inline constexpr SectionShape line_prices =
    one_for_each("the key of the line among `lines`",
                 some_facts("line_prices", "Target, price and what it earns, for each line.",
                            line_prices_members));
inline constexpr SectionShape line_costs = one_for_each(
    "the key of the line among `lines`", a_table("line_costs", "Where the price of each line goes.",
                                                 shared::makeup_members, shared::makeup_rows));
inline constexpr MemberShape tiers_members[] = {
    {"item", some_words, "what is sold"},
    {"from", a_count, "the first count that it holds for"},
    {"to", a_count, "the last count that it holds for"},
    {"price", some_money, "of a sale unit: the highest that any of these counts needs"},
    {"worst", a_count, "the count at which this price earns least"},
    {"cost", some_money, "of a sale unit, at the worst count"},
    {"margin", a_percentage | none, "profit of the net price, at the worst count"},
    {"last", some_money, "the price that the last count needs"},
    {"formula", some_words | none, "the name of the formula that is sold; none of what is no item"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
};
inline constexpr SectionShape tiers = a_table(
    "tiers",
    "Prices that hold from a count on, the whole order costed anew; the key is that of the line.",
    tiers_members, RowShape{only_lines, a_row_number()});
inline constexpr SectionShape tier_remarks = some_remarks(
    "tier_remarks",
    "Counts that are asked no more than a larger one, and tiers far dearer than their last count needs.");
inline constexpr SectionShape leftover =
    some_remarks("leftover", "What is left over of each formula and charged here.");
inline constexpr SheetShape::Section sections[] = {
    {&order},
    {&lines},
    {&totals},
    {&after_discount, sometimes},
    {&taxes, sometimes},
    {&delivery, sometimes},
    {&result},
    {&order_costs},
    {&shared::costed_and_paid, sometimes},
    {&ways},
    {&line_prices},
    {&line_costs},
    {&shared::yield_loss},
    {&tiers, sometimes},
    {&tier_remarks, sometimes},
    {&shared::formulas},
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
inline constexpr SheetShape sheet{"maker_quote_sheet",
                                  "quote",
                                  "maker",
                                  "Worksheet of a quote",
                                  "Every figure behind a quote.",
                                  sections};

} // namespace maker_quote

} // namespace groat::sheet_shapes
