#include <groat/books/read_scenarios.hpp>

#include "reading.hpp"

#include <doctest/doctest.h>

#include <string>

using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    groat::Scenario scenario(std::string const& text) { return read_scenario(node(text), reading); }
};

} // namespace

TEST_CASE("a scenario keeps its changes as written, and where they stand") {
    Reader desk;
    groat::Scenario const scenario =
        desk.scenario("scenario: a dear winter\n"
                      "changes: [butter +20 %, wage of baker 28.00]\n");
    CHECK(desk.said() == "");
    CHECK(scenario.name == "a dear winter");
    REQUIRE(scenario.changes.size() == 2);
    CHECK(scenario.changes[1].text == "wage of baker 28.00");
    CHECK(scenario.changes[1].where.column == 25);
}

TEST_CASE("a scenario without a name or changes is refused") {
    Reader desk;
    (void)desk.scenario("change: butter +20 %\n");
    CHECK(desk.marked() == "1:1+1 missing-key 1:1+6 unknown-key");
}
