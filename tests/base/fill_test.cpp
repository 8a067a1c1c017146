#include <groat/base/fill.hpp>

#include <doctest/doctest.h>

#include <stdexcept>

using groat::filled;
using groat::places_in;

TEST_CASE("the places of a text come in their order") {
    CHECK(places_in("").empty());
    CHECK(places_in("no place").empty());
    auto const places = places_in("{day}. {month} {day}");
    REQUIRE(places.size() == 3);
    CHECK(places[0] == "day");
    CHECK(places[1] == "month");
    CHECK(places[2] == "day");
}

TEST_CASE("a brace that opens or closes nothing is a place without a name") {
    for (auto const* text : {"{", "}", "{}", "a } b", "a { b", "{a{"}) {
        auto const places = places_in(text);
        REQUIRE_MESSAGE(!places.empty(), text);
        CHECK_MESSAGE(places.front().empty(), text);
    }
}

TEST_CASE("places are filled, and what fills them stands as it is") {
    CHECK(filled("Valid until {date}.", {{"date", "1 May"}}) == "Valid until 1 May.");
    CHECK(filled("{b}{a}{b}", {{"a", "1"}, {"b", "{a}"}}) == "{a}1{a}");
    CHECK(filled("nothing", {}) == "nothing");
    CHECK(filled("", {{"a", "1"}}).empty());
}

TEST_CASE("a place without a value is misuse") {
    CHECK_THROWS_AS((void)filled("{a} {b}", {{"a", "1"}}), std::logic_error);
    CHECK_THROWS_AS((void)filled("{", {{"", "1"}}), std::logic_error);
}
