#include <groat/base/base64.hpp>

#include <doctest/doctest.h>

using namespace groat;

TEST_CASE("bytes as letters") { // RFC 4648, section 10
    CHECK(base64("") == "");
    CHECK(base64("f") == "Zg==");
    CHECK(base64("fo") == "Zm8=");
    CHECK(base64("foo") == "Zm9v");
    CHECK(base64("foob") == "Zm9vYg==");
    CHECK(base64("fooba") == "Zm9vYmE=");
    CHECK(base64("foobar") == "Zm9vYmFy");
}

TEST_CASE(
    "bytes that are no text") { // RFC 4648, section 9: 14 fb 9c 03 d9 7e, and its shorter ones
    CHECK(base64("\x14\xfb\x9c\x03\xd9\x7e") == "FPucA9l+");
    CHECK(base64("\x14\xfb\x9c\x03\xd9") == "FPucA9k=");
    CHECK(base64("\x14\xfb\x9c\x03") == "FPucAw==");
    CHECK(base64("\xff\xff\xff") == "////");
}
