#include <output.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::cli::checksum;

// printed by cksum of GNU coreutils 9.1
TEST_CASE("a checksum is that of cksum") {
    CHECK(checksum("") == 4294967295U);
    CHECK(checksum("123456789") == 930766865U);
    CHECK(checksum(std::string(300, 'x')) == 3786917833U); // its length takes two bytes
}
