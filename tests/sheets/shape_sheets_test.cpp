#include <groat/sheets/shape_sheets.hpp>

#include <doctest/doctest.h>

#include <cctype>
#include <set>
#include <string>
#include <string_view>

using namespace groat;

namespace {

bool is_a_key(std::string_view key) {
    for (char const c : key)
        if (std::islower(static_cast<unsigned char>(c)) == 0 && c != '_') return false;
    return !key.empty();
}

} // namespace

TEST_CASE("no two sections of a sheet and no two members of a section are called the same") {
    std::size_t members = 0;
    for (SheetShape const* sheet : sheet_shape_list) {
        CAPTURE(sheet->name);
        std::set<std::string_view> sections;
        for (SheetShape::Section const& section : sheet->sections) {
            CAPTURE(section.shape->key);
            CHECK(sections.insert(section.shape->key).second);
            std::set<std::string_view> keys = {"row", "key", "of"};
            for (MemberShape const& member : section.shape->members) {
                CAPTURE(member.key);
                CHECK(keys.insert(member.key).second);
                ++members;
            }
        }
    }
    CHECK(members > 400);
}

TEST_CASE("no key of a sheet holds a number that runs, or a name") {
    for (SheetShape const* sheet : sheet_shape_list)
        for (SheetShape::Section const& section : sheet->sections) {
            CHECK_MESSAGE(is_a_key(section.shape->key), section.shape->key);
            for (MemberShape const& member : section.shape->members)
                CHECK_MESSAGE(is_a_key(member.key), member.key);
        }
}

TEST_CASE("every section and every member says what it means") {
    for (SheetShape const* sheet : sheet_shape_list) {
        CHECK_FALSE(sheet->meaning.empty());
        for (SheetShape::Section const& section : sheet->sections) {
            CHECK_MESSAGE(section.shape->meaning.ends_with('.'), section.shape->key);
            CHECK(section.shape->members.empty() ==
                  (section.shape->kind == SectionShape::Kind::remarks));
            for (MemberShape const& member : section.shape->members)
                CHECK_MESSAGE(!member.meaning.empty(), member.key);
        }
    }
}

TEST_CASE("each kind of sheet is declared once for those who read it") {
    std::set<std::pair<std::string_view, std::string_view>> seen;
    for (SheetShape const* sheet : sheet_shape_list)
        CHECK(seen.insert({sheet->kind, sheet->audience}).second);
}
