#include <groat/desk/help.hpp>

#include <doctest/doctest.h>

#include <string>
#include <vector>

using groat::desk::help_on;
using groat::desk::help_overview;
using groat::desk::ManualPage;

namespace {

std::vector<ManualPage> manual() {
    return {{"loaves", {"# Loaves\n\nWhich bread,\n", "and how much?\n\n## White\n"}},
            {"portion", {"# Portions\n\nHow large?\n"}}};
}

bool says(std::string const& text, std::string const& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE(
    "the pages are listed with their questions, the other kinds of words with one that is answered") {
    std::string const text = help_overview(manual());
    CHECK(says(text, "  loaves          Which bread, and how much?\n"));
    for (std::string const word : {"portion", "loss-not-as-seen", "prime_cost"}) {
        CHECK(says(text, "groat help " + word + "\n"));
        CHECK(help_on(word, {}).has_value());
    }
}

TEST_CASE("a page of the manual is printed whole, and says all there is to say") {
    CHECK(help_on("loaves", manual()).value() ==
          "# Loaves\n\nWhich bread,\nand how much?\n\n## White\n");
    CHECK(help_on("portion", manual()).value() == "# Portions\n\nHow large?\n");
    CHECK(says(help_on("portion", {}).value(), "portion"));
}

TEST_CASE("the code of a finding may stand in brackets, as it is printed") {
    CHECK(help_on("[below-cost]", {}).value() == help_on("below-cost", {}).value());
    CHECK(says(help_on("below-cost", {}).value(), "why it matters"));
}

TEST_CASE("a word that nobody knows is answered with the one most like it") {
    auto const loavess = help_on("loavess", manual());
    REQUIRE_FALSE(loavess.has_value());
    CHECK(loavess.error().help == "did you mean 'loaves'?");
    CHECK(help_on("xyzzyx", manual()).error().help == "groat help lists what can be asked");
}
