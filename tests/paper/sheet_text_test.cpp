#include <groat/paper/sheet_text.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

using namespace groat;

namespace {

namespace on = sheet_shapes;

constexpr std::string_view sizes[] = {"half", "full"};
constexpr MemberShape tray_members[] = {
    {"size", on::one_of(sizes), "of the tray"},
    {"price", on::some_money | on::none, "of one", on::sometimes},
};
constexpr SectionShape trays =
    on::one_for_each("the shelf", on::a_table("trays", "Each tray.", tray_members,
                                              {on::only_lines, on::a_row_number()}));
constexpr SectionShape how = on::some_remarks("how", "How they were counted.");
constexpr SheetShape::Section of_maker[] = {{&trays}, {&how, on::sometimes}};
constexpr SheetShape::Section of_client[] = {{&trays}};
constexpr SheetShape maker{"maker_trays", "trays", "maker", "Trays", "All trays.", of_maker};
constexpr SheetShape client{"client_trays", "trays", "client", "Trays", "Some trays.", of_client};
constexpr SheetShape const* all[] = {&maker, &client};

} // namespace

TEST_CASE("the page on what programs read has each sheet, section and member") {
    std::string const page = manual_of_sheets(all);
    auto const says = [&](std::string_view part) { return page.find(part) != std::string::npos; };
    CHECK(says("## trays for the maker\n\nAll trays.\n"));
    CHECK(says("### trays\n\nEach tray. Rows, for each `of`: the shelf.\n"));
    CHECK(says("| `size` | `half` or `full` | of the tray |\n"));
    CHECK(says("| `price` | money or null; not always there | of one |\n"));
    CHECK(says("### how\n\nHow they were counted. Sentences. Not on each of these sheets.\n"));
}

TEST_CASE("a member is explained wherever it stands") {
    CHECK(help_on_member(all, "size") ==
          "'size' on the sheets of --as json:\n\n"
          "  of the tray (`half` or `full`)\n"
          "      in trays for the maker, trays; trays for the client, trays\n");
    CHECK(help_on_member(all, "how") == "'how' on the sheets of --as json:\n\n"
                                        "  How they were counted.\n"
                                        "      in trays for the maker\n");
    CHECK(help_on_member(all, "sise").empty());
    CHECK(known_members(all) == std::vector<std::string>{"how", "price", "size", "trays"});
}
