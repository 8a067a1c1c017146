#include "books.hpp"

using namespace groat;
using namespace groat::test;

TEST_CASE("a formula comes out in pieces when it is portioned or says how many it makes") {
    Formula dough;
    CHECK(!dough.makes_pieces());
    dough.makes = quantity("2 kg");
    CHECK(!dough.makes_pieces());
    dough.makes = quantity("40");
    CHECK(dough.makes_pieces());

    Formula portioned;
    portioned.portion = quantity("24 g");
    CHECK(portioned.makes_pieces());
    portioned.portion = quantity("#60 scoop");
    CHECK(portioned.makes_pieces());
}

TEST_CASE("a line is an amount or a baker's percentage") {
    CHECK(!line({"flour", "620 g"}).is_percentage());
    CHECK(line({"water", "67 %"}).is_percentage());
    CHECK(line({"lemon", "3 as bought"}).is_as_bought);
}
