#include <output.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::cli::checksum;
using groat::cli::file_name;

// printed by cksum of GNU coreutils 9.1
TEST_CASE("a checksum is that of cksum") {
    CHECK(checksum("") == 4294967295U);
    CHECK(checksum("123456789") == 930766865U);
    CHECK(checksum(std::string(300, 'x')) == 3786917833U); // its length takes two bytes
}

TEST_CASE("any words make the name of a file") {
    CHECK(file_name("Rye-plum sandwich, box of 12") == "rye-plum-sandwich-box-of-12");
    CHECK(file_name("../a/b\\c:d") == "a-b-c-d");
    CHECK(file_name("Nussschnecke, Stück") == "nussschnecke-stück");
    CHECK(file_name("...") == "sheet");
    CHECK(file_name("") == "sheet");
    std::string const cut = file_name(std::string(99, 'a') + "üü"); // no letter is cut in two
    CHECK(cut == std::string(99, 'a'));
}
