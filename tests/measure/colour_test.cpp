#include <groat/base/rounding.hpp>
#include <groat/measure/colour.hpp>

#include <doctest/doctest.h>

using namespace groat;

namespace {

std::string contrast(std::string_view colour, unsigned places = 2) {
    auto const read = parse_colour(colour);
    REQUIRE(read.has_value());
    return decimal(contrast_with_white(*read), places);
}

} // namespace

TEST_CASE("a colour is red, green and blue, short or long") {
    CHECK(hex(*parse_colour("#5a3a1b")) == "#5a3a1b");
    CHECK(hex(*parse_colour("#5A3A1B")) == "#5a3a1b");
    CHECK(hex(*parse_colour("#09f")) == "#0099ff"); // CSS Color 4, section 5.2: each digit twice
    CHECK(*parse_colour("#09f") == Colour{{0x00, 0x99, 0xff}});
}

TEST_CASE("what is not a colour is refused") {
    for (std::string_view const wrong :
         {"", "#", "brown", "5a3a1b", "#5a3a1", "#5a3a1b00", "#12", "#ggg", "#5a3a1g", "# a3a1b",
          "#-5a3a1", "rgb(1,2,3)", "#５a3a1b", "#5a3a1b;}"}) {
        auto const read = parse_colour(wrong);
        REQUIRE_FALSE(read.has_value());
        CHECK(read.error().code == "bad-colour");
    }
}

TEST_CASE("the contrast with white is that of WCAG 2") {
    // Understanding SC 1.4.3 and its techniques name #767676 as the lightest grey that passes, with 4.54 : 1,
    // #777777 as one that fails with 4.48, and #595959 as 7 : 1; black on white is 21 : 1 (from memory).
    CHECK(contrast("#767676") == "4.54");
    CHECK(contrast("#777777") == "4.48");
    CHECK(contrast("#595959") == "7.00");
    CHECK(contrast("#000000") == "21.00");
    CHECK(contrast("#ffffff") == "1.00");
    // luminance of a pure colour is its own factor: 1.05 / 0.2626, 1.05 / 0.7652, 1.05 / 0.1222
    CHECK(contrast("#f00", 4) == "3.9985");
    CHECK(contrast("#0f0", 4) == "1.3722");
    CHECK(contrast("#00f", 4) == "8.5925");
}

TEST_CASE("the power of 2.4 is right to a millionth on both sides of the straight part") {
    // by Python: 1.05 / (((v / 255 + 0.055) / 1.055) ** 2.4 + 0.05), and v / 255 / 12.92 up to v = 10
    CHECK(contrast("#0a0a0a", 6) == "19.798146");
    CHECK(contrast("#0b0b0b", 6) == "19.682628");
    CHECK(contrast("#5a3a1b", 6) == "10.215098");
    CHECK(contrast("#008000", 6) == "5.137403");
    CHECK(contrast("#22242a", 6) == "15.511890");
}

TEST_CASE("a darker grey has never less contrast, and the line runs between #767676 and #777777") {
    Number before = 22;
    for (int grey = 0; grey < 256; ++grey) {
        Number const contrast = contrast_with_white({{grey, grey, grey}});
        CHECK(contrast < before);
        CHECK((contrast >= least_contrast()) == (grey <= 0x76));
        before = contrast;
    }
}
