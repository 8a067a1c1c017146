#include <groat/measure/temperature.hpp>

#include "amounts.hpp"

#include <string>
#include <string_view>

using groat::find_scale;
using groat::is_temperature;
using groat::Number;
using groat::on_scale;
using groat::parse_temperature;
using groat::temperature_of;
using groat::TemperatureScale;

namespace {

constexpr TemperatureScale scales[] = {TemperatureScale::fahrenheit, TemperatureScale::celsius,
                                       TemperatureScale::kelvin};

Number celsius(std::string_view text) {
    return on_scale(parse_temperature(text).value(), TemperatureScale::celsius);
}
Number fahrenheit(std::string_view text) {
    return on_scale(parse_temperature(text).value(), TemperatureScale::fahrenheit);
}

std::string refusal(std::string_view text) {
    auto const temperature = parse_temperature(text);
    return temperature ? "read" : std::string(temperature.error().code);
}

} // namespace

TEST_CASE("the fixed points of both scales") {
    // SI brochure (BIPM, 9th ed., 2.3.1): 0 °C is 273.15 K; NIST SP 811, B.8: °C = (°F - 32) / 1.8 (both from
    // memory). Ice melts at 32 °F, water boils at 212 °F; the scales meet at -40.
    CHECK(celsius("32 F") == 0);
    CHECK(celsius("212 F") == 100);
    CHECK(fahrenheit("-40 C") == -40);
    CHECK(celsius("0 K") == figure("-273.15"));
    CHECK(fahrenheit("0 K") == figure("-459.67"));
}

TEST_CASE("the Food Code's cold holding is one temperature on both scales") {
    // FDA Food Code 2022, 3-501.16(A)(2): 5 °C (41 °F) (from memory; 41 F seen on a state's sheet)
    CHECK(celsius("41 F") == 5);
    CHECK(fahrenheit("5 °C") == 41);
}

TEST_CASE("an oven's temperature is not rounded on the way") {
    // 350 - 32 = 318, times 5 / 9 = 176 2/3
    CHECK(celsius("350 F") == figure("176 2/3"));
    CHECK(fahrenheit("175 C") == 347);
}

TEST_CASE("what one scale reads, read back, is the same temperature") {
    Draw draw(11);
    for (int i = 0; i < 300; ++i) {
        Number const reading = draw.number(0, 600);
        for (TemperatureScale const scale : scales)
            CHECK(on_scale(temperature_of(reading, scale).value(), scale) == reading);
    }
}

TEST_CASE("scales are written as people write them") {
    for (std::string_view const text :
         {"350 F", "350F", "350 °F", "350°F", "350 degrees Fahrenheit", "350 deg F", "350º F"})
        CHECK_MESSAGE(celsius(text) == figure("176 2/3"), std::string(text));
    CHECK(celsius("20 centigrade") == 20);
    CHECK(celsius("-18 C") == -18);
    CHECK(celsius("37 1/2 C") == figure("37.5"));
    CHECK(find_scale("Celsius") == TemperatureScale::celsius);
}

TEST_CASE("a small letter is no scale, since a small c is a cup to many") {
    CHECK(!is_temperature("2 c"));
    CHECK(!is_temperature("350 f"));
    CHECK(!is_temperature("2 cup"));
    CHECK(!is_temperature("350"));
    CHECK(!is_temperature(""));
    CHECK(is_temperature("350 F"));
}

TEST_CASE("what is no temperature is refused") {
    CHECK(refusal("warm") == "bad-temperature");
    CHECK(refusal("350") == "bad-temperature");
    CHECK(refusal("C") == "bad-temperature");
    CHECK(refusal("1/0 C") == "bad-temperature");
    CHECK(refusal("-274 C") == "bad-temperature");
    CHECK(refusal("-500 F") == "bad-temperature");
    CHECK(refusal("-1 K") == "bad-temperature");
}
