#include <groat/base/name.hpp>

#include <doctest/doctest.h>

#include <set>
#include <string>
#include <string_view>
#include <vector>

using groat::nearest_name;

namespace {

std::vector<std::string> const pantry = {
    "bread flour", "plain flour", "caster sugar", "butter",        "buttermilk",
    "salt",        "egg",         "egg white",    "crème fraîche", "rice"};

std::string suggestion(std::string_view missed) {
    return nearest_name(missed, pantry).value_or("nothing");
}

} // namespace

TEST_CASE("a slip of the fingers is answered with the name that was meant") {
    CHECK(suggestion("plane flour") == "plain flour"); // two letters changed
    CHECK(suggestion("plain flor") == "plain flour");  // one left out
    CHECK(suggestion("buttter") == "butter");          // one put in
    CHECK(suggestion("slat") == "salt");               // two swapped: one slip, not two
    CHECK(suggestion("caster suger") == "caster sugar");
    CHECK(suggestion("eg") == "egg");
}

TEST_CASE("capitals and the joining of words are no slips") {
    CHECK(suggestion("Plain-Flour") == "plain flour");
    CHECK(suggestion("EGG_WHITE") == "egg white");
    CHECK(suggestion("BUTTER") == "butter");
}

TEST_CASE("what resembles nothing gets no suggestion") {
    CHECK(suggestion("cardamom") == "nothing");
    CHECK(suggestion("") == "nothing");
    CHECK(suggestion("saffron threads") == "nothing");
    CHECK(suggestion(std::string(1'000'000, 'b')) == "nothing");
    CHECK(!nearest_name("butter", std::vector<std::string>{}));
    CHECK(!nearest_name("butter", std::vector<std::string>{std::string(1'000'000, 'b')}));
}

TEST_CASE("of two names equally near, the first is suggested") {
    CHECK(nearest_name("ride", std::vector<std::string>{"rice", "rise"}) == "rice");
    CHECK(nearest_name("ride", std::vector<std::string>{"rise", "rice"}) == "rise");
}

TEST_CASE("a letter with an accent is one letter: creme was meant to be crème") {
    // one letter of five is changed; it takes two bytes in UTF-8, which are not two slips
    CHECK(nearest_name("creme", std::vector<std::string>{"crème"}) == "crème");
    CHECK(suggestion("creme fraiche") == "crème fraîche");
}

TEST_CASE("names may come from any ordered list of words") {
    CHECK(nearest_name("prise", std::set<std::string>{"item", "price"}) == "price");
    CHECK(nearest_name("prise", std::vector<std::string_view>{"item", "price"}) == "price");
}
