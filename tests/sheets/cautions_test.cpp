#include <groat/sheets/cautions.hpp>

#include <doctest/doctest.h>

#include <string>
#include <string_view>

using namespace groat;

TEST_CASE("how to keep it is said in words that need no book") {
    CHECK(keeping_words({}).empty());
    CHECK(keeping_words({KeepAt::room, std::nullopt}) == "keep dry at room temperature");
    CHECK(keeping_words({KeepAt::cool, 30}) == "keep cool and dry; eat within 30 days");
    CHECK(keeping_words({KeepAt::frozen, std::nullopt}) == "keep frozen");
    CHECK(keeping_words({std::nullopt, 4}) == "eat within 4 days");
    CHECK(keeping_words({std::nullopt, 1}) == "eat on the day it is made");
}

TEST_CASE("cold means 5 degrees Celsius or 41 Fahrenheit, or less") {
    // FDA Food Code 2022, 3-501.16(A)(2) (from memory; 41 F seen on a state's sheet); 5 x 9/5 + 32 = 41
    CHECK(5 * 9 / 5 + 32 == 41);
    CHECK(keeping_words({KeepAt::cold, 4}) ==
          "keep cold, at or below 5 °C (41 °F); eat within 4 days");
    CHECK(std::string_view(maker_cold_caution).find("5 °C / 41 °F") != std::string_view::npos);
}

TEST_CASE("the cautions own up to where allergens come from and who decides on law") {
    CHECK(std::string_view(english_word("allergen caution")).find("not from a laboratory") !=
          std::string_view::npos);
    CHECK(std::string_view(english_word("allergen caution")).find("ask us") !=
          std::string_view::npos);
    CHECK(std::string_view(english_word("tax caution")).find("local law") !=
          std::string_view::npos);
    CHECK(std::string_view(maker_cold_caution).find("licensed practice") != std::string_view::npos);
}
