#include <groat/sheets/convert_sheet.hpp>

#include "sheets.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Sheet flour_sheet(std::string_view amount, std::string_view unit) {
    static Sources sources;
    std::uint32_t const file = sources.add("ingredients.yaml", "flour: {density: 125 g / cup}");
    Convertible flour;
    flour.name = "flour";
    flour.densities = {density("125 g / cup")};
    flour.densities.front().origin = {file, 1, 18, 11};
    auto const conversion =
        convert(quantity(amount), parse_unit(unit, Measures::us).value(), flour).value();
    return convert_sheet(conversion, {amount, "flour", unit}, flour, Measures::us, sources);
}

} // namespace

TEST_CASE("the sheet shows the amount, the fact used and where it is written") {
    Sheet const sheet = flour_sheet("2 3/4 cup", "g");
    CHECK(sheet.title == "2 3/4 cup of flour");
    CHECK(shown(sheet, "result", "amount") == "343.75 g");
    CHECK(shown(sheet, "result", "density") == "125 g / US cup, ingredients.yaml line 1");
    CHECK(shown(sheet, "result", "from_unit") == "236.5882365 mL");
    CHECK(shown(sheet, "result", "exactly").empty());
}

TEST_CASE("cups and spoons are also shown as one can measure them") {
    // 340 / 125 = 2.72 cups; 2 3/4 cup are 343.75 g, 1.1 % more
    Sheet const sheet = flour_sheet("340 g", "cup");
    CHECK(shown(sheet, "result", "amount") == "2.72");
    CHECK(shown(sheet, "result", "nearest") == "2 3/4 cup");
    // 60 / 125 = 0.48 cups, 7.68 tbsp: 1/2 cup is 4.2 % too much, 7 1/2 tbsp 2.3 % too little;
    // 1/3 cup + 2 1/4 tbsp
    CHECK(shown(flour_sheet("60 g", "cup"), "result", "amount") == "0.48");
}

TEST_CASE("what rounding hides is shown as a fraction where one can read it") {
    auto const temperature = parse_temperature("350 F").value();
    Sheet const sheet = convert_sheet(temperature, TemperatureScale::celsius, {"350 F", "", "C"});
    CHECK(shown(sheet, "result", "amount") == "176.667");
    CHECK(shown(sheet, "result", "exactly") == "176 2/3 °C");
}
