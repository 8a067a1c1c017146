/// What the sheets on runs and yield tests hold.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace runs {

inline constexpr MemberShape losses_members[] = {
    {"stage", some_words, "when it was lost"},
    {"runs", a_count, "that tell of it"},
    {"books", a_percentage, "what the books say"},
    {"pooled", a_percentage, "lost of all that the stage began with"},
    {"mean", a_percentage, "of the runs"},
    {"lowest", a_percentage, "least of the runs"},
    {"highest", a_percentage, "most of the runs"},
    {"more", a_count, "runs that lost more than the books say"},
    {"write", a_percentage | none, "what to write instead, where the runs ask for it"},
};
inline constexpr std::string_view losses_keys[] = {"before_portioning", "after_portioning",
                                                   "of_pieces", "in_all"};
inline constexpr SectionShape losses = one_for_each(
    "the formula's name", a_table("losses", "Losses of each formula, by stage.", losses_members,
                                  RowShape{only_lines, one_key_of(losses_keys)}));
inline constexpr SectionShape news =
    one_for_each("the formula's name", some_remarks("news", "What new figures mean."));
inline constexpr MemberShape runs_members[] = {
    {"run", some_words, "its name"},
    {"date", a_day | none, "its day"},
    {"before_portioning", a_percentage | none, "lost at this stage", sometimes},
    {"after_portioning", a_percentage | none, "lost at this stage", sometimes},
    {"of_pieces", a_percentage | none, "lost at this stage", sometimes},
    {"in_all", a_percentage | none, "lost at this stage", sometimes},
};
inline constexpr SectionShape runs =
    one_for_each("the formula's name", a_table("runs", "Run by run.", runs_members,
                                               RowShape{only_lines, a_row_number()}));
inline constexpr SectionShape how = some_remarks("how", "How this is judged.");
inline constexpr SheetShape::Section sections[] = {
    {&losses},
    {&news, sometimes},
    {&runs, sometimes},
    {&how},
};
inline constexpr SheetShape sheet{"runs_sheet",
                                  "runs",
                                  "maker",
                                  "What runs lost",
                                  "Losses seen in the kitchen beside those of the books.",
                                  sections};

} // namespace runs

namespace variance {

inline constexpr MemberShape order_members[] = {
    {"client", some_words, "for whom", sometimes},
    {"prices_of", a_day, "the day whose prices hold"},
    {"currency", a_currency, "that of the shop, as USD"},
};
inline constexpr SectionShape order = some_facts("order", "The order.", order_members);
inline constexpr MemberShape runs_members[] = {
    {"run", some_words, "its name"},
    {"date", a_day | none, "its day"},
    {"formula", some_words, "what was made"},
    {"good", an_amount, "good pieces, or mass"},
};
inline constexpr SectionShape runs =
    a_table("runs", "What came out.", runs_members, RowShape{only_lines, a_row_number()});
inline constexpr MemberShape difference_members[] = {
    {"part", some_words, "what it is"},
    {"cost", some_money, "above 0 is unfavourable"},
    {"judged", some_words, "favourable or not; may be empty"},
};
inline constexpr std::string_view difference_keys[] = {"standard", "price", "usage",
                                                       "rate",     "time",  "actual"};
inline constexpr SectionShape difference =
    a_table("difference", "Where the difference comes from.", difference_members,
            RowShape{lines_and_total, one_key_of(difference_keys)});
inline constexpr MemberShape ingredients_members[] = {
    {"name", some_words, "its name"},
    {"allowed", an_amount | none, "what the books allow"},
    {"taken", an_amount | none, "what it really took"},
    {"standard_price", some_money | none, "a kilogram or hour in the books"},
    {"price", some_money | none, "a kilogram or hour as paid"},
    {"by_price", some_money, "difference by price or rate"},
    {"by_quantity", some_money, "difference by usage or time"},
    {"difference", some_money, "in total; above 0 is unfavourable"},
};
inline constexpr SectionShape ingredients =
    a_table("ingredients", "Ingredients as purchased, of those that runs wrote down.",
            ingredients_members, RowShape{lines_and_total, a_row_name("its name, or total")});
inline constexpr MemberShape labour_members[] = {
    {"name", some_words, "its name"},
    {"allowed", some_minutes | none, "what the books allow"},
    {"taken", some_minutes | none, "what it really took"},
    {"standard_price", some_money | none, "a kilogram or hour in the books"},
    {"price", some_money | none, "a kilogram or hour as paid"},
    {"by_price", some_money, "difference by price or rate"},
    {"by_quantity", some_money, "difference by usage or time"},
    {"difference", some_money, "in total; above 0 is unfavourable"},
};
inline constexpr SectionShape labour =
    a_table("labour", "Labour with on-cost, of those that runs wrote down.", labour_members,
            RowShape{lines_and_total, a_row_name("its name, or total")});
inline constexpr SectionShape how = some_remarks("how", "How this is calculated.");
inline constexpr SheetShape::Section sections[] = {
    {&order}, {&runs}, {&difference}, {&ingredients}, {&labour}, {&how},
};
inline constexpr SheetShape sheet{"variance_sheet",
                                  "variance",
                                  "maker",
                                  "Variance of an order",
                                  "What an order really cost against the books, and why.",
                                  sections};

} // namespace variance

namespace yields {

inline constexpr MemberShape tests_members[] = {
    {"test", some_words, "its name"},
    {"date", a_day | none, "its day"},
    {"supplier", some_words | none, "from whom; may be empty", sometimes},
    {"bought", a_mass | none, "bought"},
    {"usable", a_mass | none, "usable"},
    {"yield", a_percentage, "usable of what was bought"},
    {"factor", a_count, "yield factor: bought for one usable"},
};
inline constexpr std::string_view tests_keys[] = {"total"};
inline constexpr SectionShape tests = one_for_each(
    "the ingredient's name", a_table("tests", "Tests of each ingredient.", tests_members,
                                     RowShape{lines_and_total, a_row_number(tests_keys)}));
inline constexpr MemberShape range_members[] = {
    {"tests", a_count, "tests"},
    {"mean", a_percentage, "of the yields"},
    {"lowest", a_percentage, "lowest yield"},
    {"highest", a_percentage, "highest yield"},
    {"spread", some_points, "highest less lowest"},
    {"deviation", some_points, "how far a test is from the mean, on average"},
};
inline constexpr SectionShape range =
    one_for_each("the ingredient's name",
                 some_facts("range", "How far several tests lie apart.", range_members));
inline constexpr MemberShape parts_members[] = {
    {"part", some_words, "what it is"},
    {"mass", a_mass, "its mass"},
    {"share", a_percentage, "of what was bought"},
    {"worth", some_money | none, "if it is used", sometimes},
};
inline constexpr SectionShape parts = one_for_each(
    "the test's name", a_table("parts", "Where every gram of a test went.", parts_members,
                               RowShape{lines_and_total, a_row_name("what it is")}));
inline constexpr MemberShape costs_members[] = {
    {"test", some_words, "its name"},
    {"paid", some_money, "paid for it"},
    {"bought_kg", some_money, "a kilogram as bought"},
    {"by_product", some_money | none, "what by-products are worth, below 0", sometimes},
    {"usable_kg", some_money, "a usable kilogram"},
    {"usable_lb", some_money, "a usable pound", sometimes},
    {"cost_factor", a_count | none,
     "a usable unit, by-products taken off, over the price as bought"},
};
inline constexpr SectionShape costs = one_for_each(
    "the ingredient's name", a_table("costs", "What the tests of each ingredient cost.",
                                     costs_members, RowShape{only_lines, a_row_number()}));
inline constexpr MemberShape books_members[] = {
    {"offer", some_words, "supplier and pack"},
    {"said_by", some_words, "who says the yield"},
    {"yield", a_percentage, "in the books"},
    {"tested", a_percentage | none, "of all tests"},
    {"points", some_points | none, "tested less books"},
    {"usable_kg", some_money | none, "a usable kilogram by the books"},
    {"tested_kg", some_money | none, "a usable kilogram as tested"},
    {"dearer_kg", some_money | none, "tested less books"},
};
inline constexpr SectionShape books =
    one_for_each("the ingredient's name", a_table("books", "What the books say.", books_members,
                                                  RowShape{only_lines, a_row_number()}));
inline constexpr SectionShape remarks = one_for_each(
    "the ingredient's name", some_remarks("remarks", "Where the books lie outside the tests."));
inline constexpr SheetShape::Section sections[] = {
    {&tests}, {&range, sometimes},   {&parts, sometimes}, {&costs, sometimes},
    {&books}, {&remarks, sometimes},
};
inline constexpr SheetShape sheet{
    "yields_sheet",
    "yields",
    "maker",
    "Yield tests",
    "What was weighed, what a usable kilogram cost, and whether the books agree.",
    sections};

} // namespace yields

} // namespace groat::sheet_shapes
