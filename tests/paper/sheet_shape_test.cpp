#include <groat/paper/sheet_shape.hpp>

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

using namespace groat;

namespace {

namespace on = sheet_shapes;

constexpr MemberShape tray_members[] = {
    {"tray", on::some_words, "its name"},
    {"from", on::a_day | on::none, "since when it is there"},
    {"holds", on::a_count, "pieces"},
    {"note", on::some_words, "what is to be known", on::sometimes},
};
constexpr SectionShape trays =
    on::a_table("trays", "Each tray.", tray_members, {on::lines_and_total, on::a_row_number()});
constexpr SectionShape shelf = on::some_facts("shelf", "Where they stand.", tray_members);
constexpr SectionShape how = on::some_remarks("how", "How they were counted.");

} // namespace

TEST_CASE("a table of declared columns has their keys, and sets words and days left") {
    Table table = table_of<trays>("Trays", {{"tray"}, {"from", "Since"}, {"holds", "Pieces"}});
    add_column<trays>(table, {"note", "Note"});
    table.columns.push_back(bar_column());
    CHECK(table.key == "trays");
    CHECK(table.title == "Trays");
    REQUIRE(table.columns.size() == 5);
    CHECK(table.columns[0].key == "tray");
    CHECK(table.columns[0].title.empty());
    CHECK(table.columns[0].is_words);
    CHECK(table.columns[1].title == "Since");
    CHECK(table.columns[1].is_words);
    CHECK_FALSE(table.columns[2].is_words);
    CHECK(table.columns[3].is_words);
    CHECK(table.columns[4].is_bar);
}

TEST_CASE("a fact without a value is left out") {
    FactsOf<shelf> facts("Shelf", "the cellar");
    facts.add("tray", "Tray", std::string("half sheet"));
    facts.add("note", "Note", Cell());
    CHECK(facts.says("Tray"));
    CHECK_FALSE(facts.says("Note"));
    Facts const made = facts;
    CHECK(made.key == "shelf");
    CHECK(made.title == "Shelf");
    CHECK(made.of == "the cellar");
    REQUIRE(made.facts.size() == 1);
    CHECK(made.facts[0].key == "tray");
    CHECK(facts_of<shelf>("", {{"holds", "Holds", Figure{"12", 12, "each"}}}).facts.size() == 1);
}

TEST_CASE("remarks have the key of their section") {
    CHECK(remarks_of<how>("How", {"By hand."}).key == "how");
    CHECK(remarks_of<how>("", {}, "the cellar").of == "the cellar");
}

TEST_CASE("a key that is only known when the program runs is looked up then") {
    CHECK(MemberOf<trays>::named("holds")->meaning == "pieces");
    CHECK_THROWS_AS((void)MemberOf<trays>::named("hold"), std::logic_error);
}
