#include <groat/paper/sheet_schema.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>

using namespace groat;

namespace {

namespace on = sheet_shapes;

constexpr std::string_view sizes[] = {"half", "full"};
constexpr std::string_view sum[] = {"total"};
constexpr MemberShape tray_members[] = {
    {"size", on::one_of(sizes), "of the tray"},
    {"price", on::some_money | on::none, "of one"},
    {"note", on::some_words, "what is to be known", on::sometimes},
};
constexpr SectionShape trays = on::not_empty(
    on::a_table("trays", "Each tray.", tray_members, {on::lines_and_total, on::a_row_number(sum)}));
constexpr SectionShape shelves =
    on::one_for_each("the shelf", on::some_facts("shelves", "Where they stand.", tray_members));
constexpr SectionShape how = on::some_remarks("how", "How they were counted.");
constexpr SheetShape::Section sections[] = {{&trays}, {&shelves, on::sometimes}, {&how}};
constexpr SheetShape sheet{"tray_sheet", "trays", "maker", "Trays", "All trays.", sections};
constexpr SheetShape const* all[] = {&sheet};

bool says(std::string_view part) { return schema_of(all).find(part) != std::string::npos; }

} // namespace

TEST_CASE("a member's line says what it means and what it may be") {
    CHECK(says(R"("size": {"description": "of the tray", "enum": ["half", "full"]})"));
    CHECK(says(
        R"("price": {"description": "of one", "anyOf": [{"$ref": "#/$defs/money"}, {"type": "null"}]})"));
}

TEST_CASE("what may be left out is not required") {
    CHECK(says(R"("required": ["row", "key", "size", "price"])"));
    CHECK(says(R"("required": ["schema", "sheet", "for", "title", "letterhead", "trays", "how"])"));
}

TEST_CASE("a row says of which kind it is, and its key is a number or one of some words") {
    CHECK(says(R"("row": {"enum": ["line", "total"]})"));
    CHECK(says(R"("key": {"type": "string", "pattern": "^([1-9][0-9]*|total)$"})"));
}

TEST_CASE("sections of one kind stand in a list, each with what it is of") {
    CHECK(says(R"("required": ["of", "facts"])"));
    CHECK(says(R"("of": {"description": "the shelf", "$ref": "#/$defs/words"})"));
}

TEST_CASE("a sheet is chosen by its kind and by who is to read it") {
    CHECK(says(
        R"("if": {"required": ["sheet", "for"], "properties": {"sheet": {"const": "trays"}, "for": {"const": "maker"}}})"));
    CHECK(says(R"("then": {"$ref": "#/$defs/tray_sheet"})"));
}
