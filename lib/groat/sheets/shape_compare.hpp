/// What the sheets on offers and on measures hold.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace compare {

inline constexpr MemberShape offers_members[] = {
    {"offer", some_words, "supplier and pack"},
    {"price", some_money, "a kilogram or piece as bought, with freight and delivery"},
    {"yield", a_percentage, "usable of what is bought"},
    {"usable", some_money, "a usable kilogram or piece"},
    {"usable_lb", some_money, "a usable pound, where the shop measures in pounds", sometimes},
    {"dearer", a_percentage, "than the best"},
    {"extra", some_money, "more than the best, for the amount wanted", sometimes},
    {"age", a_count | none, "days since the price is in force"},
    {"break_even_yield", a_percentage | none, "the yield at which it draws level with the best"},
    {"supplier", some_words, "whose offer it is"},
    {"pack", some_words, "its pack, as the books write it"},
};
inline constexpr SectionShape offers = one_for_each(
    "its name in the books",
    a_table("offers",
            "Offers in force for each ingredient or supply, per usable kilogram or piece.",
            offers_members, RowShape{only_lines, a_row_number()}));
inline constexpr MemberShape delivered_members[] = {
    {"offer", some_words, "supplier and pack"},
    {"packs", a_count, "whole packs"},
    {"goods", some_money, "these packs, with freight and deposit"},
    {"delivery", some_money, "for the delivery"},
    {"landed", some_money, "in all"},
    {"note", some_words,
     "only compared, below the minimum order, or more than may be had; else empty"},
    {"supplier", some_words, "whose offer it is"},
    {"pack", some_words, "its pack, as the books write it"},
};
inline constexpr SectionShape delivered =
    one_for_each("its name in the books",
                 a_table("delivered", "What the amount wanted, or a pack, costs at the door.",
                         delivered_members, RowShape{only_lines, a_row_number()}));
inline constexpr MemberShape paid_members[] = {
    {"offer", some_words, "supplier and pack"},
    {"on", a_day, "the day it was last bought"},
    {"paid", some_money, "net, without freight, delivery and deposit"},
    {"listed", some_money | none, "the same of the list; none where there is none in force"},
    {"change", a_percentage | none, "paid against listed"},
    {"supplier", some_words, "whose offer it is"},
    {"pack", some_words, "its pack, as the books write it"},
};
inline constexpr SectionShape paid = one_for_each(
    "its name in the books",
    a_table("paid", "What was last paid beside what is listed, per kilogram or piece as bought.",
            paid_members, RowShape{only_lines, a_row_number()}));
inline constexpr std::string_view always[] = {"always"};
inline constexpr MemberShape history_members[] = {
    {"from", a_day | one_of(always), "since when"},
    {"offer", some_words, "supplier and pack"},
    {"usable", some_money, "a usable kilogram or piece"},
    {"supplier", some_words, "whose offer it is"},
    {"pack", some_words, "its pack, as the books write it"},
};
inline constexpr SectionShape history = one_for_each(
    "its name in the books", a_table("history", "How prices went, per usable kilogram or piece.",
                                     history_members, RowShape{only_lines, a_row_number()}));
inline constexpr SheetShape::Section sections[] = {
    {&offers, sometimes},
    {&delivered, sometimes},
    {&paid, sometimes},
    {&history, sometimes},
};
inline constexpr SheetShape sheet{"compare_sheet",
                                  "compare",
                                  "maker",
                                  "Offers side by side",
                                  "Suppliers' offers per usable unit and at the door.",
                                  sections};

} // namespace compare

namespace convert {

inline constexpr MemberShape result_members[] = {
    {"amount", a_figure, "in the unit that was asked for"},
    {"exactly", some_words, "as a mixed fraction, where rounding hides something", sometimes},
    {"nearest", some_words, "in cups and spoons", sometimes},
    {"density", some_words, "the density of the books it went by, and where it stands", sometimes},
    {"each", some_words, "the weight of one it went by, and where it stands", sometimes},
    {"from_unit", some_words, "the size of the cup or spoon that was given", sometimes},
    {"to_unit", some_words, "the size of the cup or spoon that was asked for", sometimes},
};
inline constexpr SectionShape result = some_facts("result", "The amount.", result_members);
inline constexpr SheetShape::Section sections[] = {
    {&result},
};
inline constexpr SheetShape sheet{"convert_sheet",
                                  "convert",
                                  "maker",
                                  "Conversion",
                                  "An amount in another unit, and what it went by.",
                                  sections};

} // namespace convert

} // namespace groat::sheet_shapes
