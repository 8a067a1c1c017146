/// What the sheets on the books themselves hold: their check, an import, their words.
#pragma once

#include <groat/paper/sheet_shape.hpp>

#include <string_view>

namespace groat::sheet_shapes {

namespace check {

inline constexpr MemberShape books_members[] = {
    {"ingredients", a_count, "ingredients and supplies"},
    {"suppliers", a_count, "suppliers"},
    {"offers", a_count, "offers of price lists"},
    {"formulas", a_count, "formulas"},
    {"orders", a_count, "orders"},
    {"receipts", a_count, "receipts of purchases", sometimes},
    {"menus", a_count, "menus", sometimes},
    {"yield_tests", a_count, "yield tests", sometimes},
    {"runs", a_count, "runs", sometimes},
    {"errors", a_count, "findings that hold everything up"},
    {"warnings", a_count, "findings that hold up nothing"},
};
inline constexpr SectionShape books =
    some_facts("books", "How much the books hold.", books_members);
inline constexpr std::string_view findings_severity_words[] = {"error", "warning"};
inline constexpr MemberShape findings_members[] = {
    {"severity", one_of(findings_severity_words), "whether it holds things up"},
    {"code", some_words, "a word for its kind: unknown-key"},
    {"file", some_words, "the file; empty where it is of none"},
    {"line", a_count, "in the file, from 1 on; 0 for none"},
    {"column", a_count, "in the line, from 1 on; 0 for none"},
    {"what", some_words, "what is wrong"},
    {"help", some_words, "how to mend it; may be empty"},
};
inline constexpr SectionShape findings =
    a_table("findings", "Each finding, in the order of files and lines.", findings_members,
            RowShape{only_lines});
inline constexpr MemberShape accepted_members[] = {
    {"code", some_words, "of the findings"},
    {"count", a_count, "how many there are"},
    {"reason", some_words, "why all is well, as shop.yaml says"},
};
inline constexpr SectionShape accepted =
    not_empty(a_table("accepted", "What shop.yaml accepts, and so is not among the findings.",
                      accepted_members, RowShape{only_lines}));
inline constexpr SheetShape::Section sections[] = {
    {&books},
    {&findings},
    {&accepted, sometimes},
};
inline constexpr SheetShape sheet{"check_sheet",
                                  "check",
                                  "maker",
                                  "Check of the books",
                                  "What the books hold, and all that is wrong or odd in them.",
                                  sections};

} // namespace check

namespace importing {

inline constexpr std::string_view always[] = {"always"};
inline constexpr MemberShape report_members[] = {
    {"supplier", some_words, "whose"},
    {"file", some_words, "the file"},
    {"from", a_day | one_of(always), "since when the prices hold"},
    {"date", a_day, "the day of the prices that they are held against"},
    {"currency", a_currency, "that of the shop, as USD"},
    {"rows", a_count, "of the file"},
    {"offers", a_count, "read from it"},
    {"unmatched", a_count, "rows that nothing in the map stands for"},
    {"ignored", a_count, "rows that the map leaves out"},
};
inline constexpr SectionShape report = some_facts("import", "The list.", report_members);
inline constexpr MemberShape changed_members[] = {
    {"item", some_words, "its name in the books"},
    {"pack", some_words, "its pack"},
    {"code", some_words, "the supplier's code; may be empty"},
    {"was", some_money, "a pack until now"},
    {"now", some_money, "a pack now, freight included"},
    {"change", a_percentage | none, "of the old price; none where that was 0"},
};
inline constexpr SectionShape up =
    a_table("up", "Dearer.", changed_members, RowShape{only_lines, a_row_number()});
inline constexpr SectionShape down =
    a_table("down", "Cheaper.", changed_members, RowShape{only_lines, a_row_number()});
inline constexpr MemberShape repacked_members[] = {
    {"item", some_words, "its name in the books"},
    {"pack", some_words, "its pack"},
    {"old_pack", some_words, "the pack until now"},
    {"code", some_words, "the supplier's code; may be empty"},
    {"was", some_money, "a pack until now"},
    {"now", some_money, "a pack now, freight included"},
    {"change", a_percentage | none, "of the cost of the same amount; none where that was 0"},
};
inline constexpr SectionShape repacked =
    a_table("repacked", "In another pack.", repacked_members, RowShape{only_lines, a_row_number()});
inline constexpr MemberShape listed_members[] = {
    {"item", some_words, "its name in the books"},
    {"pack", some_words, "its pack"},
    {"code", some_words, "the supplier's code; may be empty"},
    {"now", some_money, "a pack now, freight included"},
};
inline constexpr SectionShape new_ =
    a_table("new", "New.", listed_members, RowShape{only_lines, a_row_number()});
inline constexpr MemberShape gone_members[] = {
    {"item", some_words, "its name in the books"},
    {"pack", some_words, "its pack"},
    {"was", some_money, "a pack until now"},
    {"where", some_words, "where it stands in the books"},
};
inline constexpr SectionShape gone =
    a_table("gone", "Gone.", gone_members, RowShape{only_lines, a_row_number()});
inline constexpr SectionShape unchanged =
    a_table("unchanged", "As before.", listed_members, RowShape{only_lines, a_row_number()});
inline constexpr MemberShape lost_members[] = {
    {"item", some_words, "its name in the books"},
    {"what", some_words, "what is lost"},
    {"where", some_words, "where it stands in the books"},
};
inline constexpr SectionShape lost =
    a_table("lost", "What the old offers say and the new ones do not.", lost_members,
            RowShape{only_lines, a_row_number()});
inline constexpr MemberShape unmatched_members[] = {
    {"line", a_number, "its line in the file"},
    {"code", some_words, "as written"},
    {"name", some_words, "as written"},
    {"price", some_words, "as written"},
};
inline constexpr SectionShape unmatched =
    a_table("unmatched", "Rows without an item in the map.", unmatched_members,
            RowShape{only_lines, a_row_number()});
inline constexpr SectionShape remark = some_remarks("remark", "What these prices are.");
inline constexpr SheetShape::Section sections[] = {
    {&report},
    {&up, sometimes},
    {&down, sometimes},
    {&repacked, sometimes},
    {&new_, sometimes},
    {&gone, sometimes},
    {&unchanged, sometimes},
    {&lost, sometimes},
    {&unmatched, sometimes},
    {&remark, sometimes},
};
inline constexpr SheetShape sheet{"import_sheet",
                                  "import",
                                  "maker",
                                  "New prices of a supplier",
                                  "What a supplier's new price list brings.",
                                  sections};

} // namespace importing

namespace words {

inline constexpr MemberShape words_members[] = {
    {"word", some_words, "the same"},
    {"english", some_words, "its English text, with the places that are filled in braces"},
    {"text", some_words, "that of the language asked for, if it is another", sometimes},
};
inline constexpr SectionShape words =
    not_empty(a_table("words", "Every word of words.yaml.", words_members,
                      RowShape{only_lines, a_row_name("the word's key")}));
inline constexpr SectionShape how = some_remarks("how", "How to write one's own.");
inline constexpr SheetShape::Section sections[] = {
    {&words},
    {&how},
};
inline constexpr SheetShape sheet{
    "words_sheet", "words", "maker", "Words", "The words of the sheets that leave the house.",
    sections};

} // namespace words

} // namespace groat::sheet_shapes
