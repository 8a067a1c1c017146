#include <groat/books/load.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <utility>

// The starter folder's weights against sources other than those that it names.

using namespace groat;

TEST_CASE("eggs of the starter weigh what a case of them weighs, less their shells") {
    // 7 Pa. Code 87.42: a case of 30 dozen in pounds; a large one is 24 oz a dozen. USDA SR28 01123: 12 % of an egg
    // is shell. Together within a gram of SR28's weights of shelled eggs, which the starter has (DERIVED)
    Sources sources;
    Loaded const starter = load(std::string(GROAT_SOURCE_DIR) + "/samples/starter", sources);
    REQUIRE_MESSAGE(!starter.diagnostics.has_errors(), render(starter.diagnostics, sources));
    Number const pound = find_unit("lb", Measures::us)->factor;
    CHECK(Number(45) / 30 == Number(24) / 16);
    for (auto const& each : {std::pair("jumbo egg", "56"), std::pair("extra large egg", "50.5"),
                             std::pair("large egg", "45"), std::pair("medium egg", "39.5"),
                             std::pair("small egg", "34")}) {
        std::string_view const name = each.first, pounds = each.second;
        CAPTURE(name);
        Number const in_shell = *parse_number(pounds) * pound / 360;
        Number const weight =
            *starter.book.ingredients[starter.book.ingredient_index.find(name)->second].grams_each;
        Number const difference = weight - in_shell * 88 / 100;
        CHECK(difference < 1);
        CHECK(difference > -1);
    }
    // Regulation (EU) 2023/2465: M from 53 g, L from 63 g in the shell, so a large one here is an M there
    Number const large = 45 * pound / 360;
    CHECK(large >= 53);
    CHECK(large < 63);
}
