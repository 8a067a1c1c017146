/// What a label holds.
#pragma once

#include <groat/sheets/shape_shared.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace client_label {

inline constexpr MemberShape label_members[] = {
    {"ingredients", some_words, "the ingredient statement"},
    {"contains", some_words, "the allergens that US law names", sometimes},
    {"net", some_grams, "the net weight, rounded down, in words of both systems"},
    {"pieces", a_count, "in it", sometimes},
    {"keep", some_words, "how to keep it", sometimes},
    {"made", a_day, "when it was made", sometimes},
    {"use_by", a_day, "until when to eat it", sometimes},
    {"by", some_words, "who made it, and where"},
    {"formula", some_words, "the name of the formula that is sold"},
    {"sold_as", some_words | none, "the way it is sold; none by the piece"},
    {"allergens", some_names, "those that it contains, as the books name them"},
};
inline constexpr SectionShape label =
    some_facts("label", "What stands on the label.", label_members);
inline constexpr SheetShape::Section sections[] = {
    {&label},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{"client_label_sheet",
                                  "label",
                                  "client",
                                  "Label",
                                  "What stands on the label of an item.",
                                  sections};

} // namespace client_label

namespace maker_label {

inline constexpr SectionShape label =
    some_facts("label", "What stands on the label.", client_label::label_members);
inline constexpr MemberShape weights_members[] = {
    {"item", some_words, "its name on the label"},
    {"grams", some_grams, "as used"},
    {"share", a_percentage | none, "of all that goes in"},
};
inline constexpr SectionShape weights =
    a_table("weights", "Ingredients by weight as used.", weights_members,
            RowShape{only_lines, a_row_number()});
inline constexpr SheetShape::Section sections[] = {
    {&label},
    {&weights},
    {&shared::cautions},
};
inline constexpr SheetShape sheet{"maker_label_sheet",
                                  "label",
                                  "maker",
                                  "Label, for the maker",
                                  "The label, and how much of each ingredient is used.",
                                  sections};

} // namespace maker_label

} // namespace groat::sheet_shapes
