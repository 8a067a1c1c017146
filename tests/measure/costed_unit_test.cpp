#include "amounts.hpp"

#include <groat/measure/costed_unit.hpp>

using namespace groat;

TEST_CASE("a volume is told in litres from one litre on") {
    CHECK(volume_text(figure("1234")) == "1.234 L");
    CHECK(volume_text(figure("12345.6")) == "12.35 L");
    CHECK(volume_text(figure("236.588")) == "237 mL");
    CHECK(volume_text(figure("4.92892")) == "4.93 mL");
    CHECK(volume_text(0) == "0 mL");
}

TEST_CASE("an amount is in the words of what it is costed by") {
    CHECK(amount_text(figure("1234"), Dimension::mass) == mass_text(figure("1234")));
    CHECK(amount_text(figure("59.1"), Dimension::volume) == "59.1 mL");
    CHECK(amount_text(figure("4/3"), Dimension::count) == "1.33");
}

TEST_CASE("prices are for a kilogram, a litre or a piece") {
    CHECK(price_unit(Dimension::mass).word == "kg");
    CHECK(price_unit(Dimension::volume).size == 1000);
    CHECK(price_unit(Dimension::count).size == 1);
    CHECK(price_unit(Dimension::count).more == 2);
}
