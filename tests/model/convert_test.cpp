#include "books.hpp"

#include <groat/model/convert.hpp>

using namespace groat;
using namespace groat::test;

namespace {

Ingredient known(std::string_view name, std::initializer_list<std::string_view> densities,
                 std::string_view grams_each = "") {
    Ingredient result;
    result.name = name;
    for (std::string_view const each : densities) result.densities.push_back(density(each));
    if (!grams_each.empty()) result.grams_each = number(grams_each);
    return result;
}

Number grams(std::string_view text, Ingredient const& ingredient) {
    return grams_of(quantity(text), ingredient).value();
}

} // namespace

TEST_CASE("a volume weighs what the ingredient's own density says") {
    // USDA SR28, WEIGHT.txt: flour 20081 125 g a cup, honey 19296 339 g, water 14411 1000 g a litre
    CHECK(grams("2 3/4 cup", known("flour", {"125 g / cup"})) == number("343.75"));
    CHECK(grams("1/3 cup", known("honey", {"339 g / cup"})) == 113);
    CHECK(grams("1.5 L", known("water", {"1000 g / L"})) == 1500);
}

TEST_CASE("a spoon is weighed by its own row where there is one, since rounded rows do not agree") {
    // USDA SR28, WEIGHT.txt, granulated sugar 19335: 1 tsp = 4.2 g, 1 cup = 200 g; 48 tsp make a cup and
    // would weigh 201.6 g
    Ingredient const sugar = known("sugar", {"200 g / cup", "4.2 g / tsp"});
    CHECK(grams("1 tsp", sugar) == number("4.2"));
    CHECK(grams("48 tsp", sugar) == number("201.6"));
    CHECK(grams("1 cup", sugar) == 200);
    // sour cream 01056: 1 tbsp = 12.0 g, 1 cup = 230 g: a fifth apart
    Ingredient const sour_cream = known("sour cream", {"230 g / cup", "12 g / tbsp"});
    CHECK(grams("16 tbsp", sour_cream) == 192);
    CHECK(grams("1 cup", sour_cream) == 230);
}

TEST_CASE("a measure without a row of its own is weighed by the first row") {
    // salt 02047: 1 tsp = 6.0 g, 1 cup = 292 g. A tablespoon has no row here: 3 tsp by the first row, 18 g,
    // which is what SR28 prints for it; a sixteenth of the cup, 18.25 g, if the cup comes first
    CHECK(grams("1 tbsp", known("salt", {"6 g / tsp", "292 g / cup"})) == 18);
    CHECK(grams("1 tbsp", known("salt", {"292 g / cup", "6 g / tsp"})) == number("18.25"));
}

TEST_CASE("a cup and tablespoons are weighed by the row of what is written first") {
    CHECK(grams("1 cup 1 tsp", known("sugar", {"4.2 g / tsp", "192 g / cup"})) == 196);
}

TEST_CASE("flour scooped or spooned is a sixth of the cost of a cup apart") {
    // GNU units 2.22 after The Cake Bible: all-purpose flour spooned 4.25 oz, scooped 5 oz a cup
    Number const spooned = grams("1 cup", known("flour", {"4 1/4 oz / cup"}));
    Number const scooped = grams("1 cup", known("flour", {"5 oz / cup"}));
    CHECK(printed(spooned, 1) == "120.5");
    CHECK(printed(scooped, 1) == "141.7");
    CHECK(printed((scooped / spooned - 1) * 100, 1) == "17.6");
}

TEST_CASE("eggs are counted or measured: a large one is white and yolk, 4.86 of them fill a cup") {
    // USDA SR28: 01123 large 50 g, 1 cup (4.86 large eggs) 243 g; 01124 white 33 g; 01125 yolk 17 g
    Ingredient const egg = known("egg", {"243 g / cup"}, "50");
    CHECK(grams("15 dozen", egg) == 9000);
    CHECK(grams("1 cup", egg) == number("4.86") * grams("1", egg));
    CHECK(grams("1", known("white", {}, "33")) + grams("1", known("yolk", {}, "17")) ==
          grams("1", egg));
}

TEST_CASE("two sticks of butter, a half pound and a cup are three masses") {
    // SR28 01145 prints 113 g a stick and 227 g a cup; a quarter pound is 113.3980925 g
    Ingredient const butter = known("butter", {"227 g / cup"}, "113");
    CHECK(grams("2 sticks", butter) == number("226.796185"));
    CHECK(grams("1/2 lb", butter) == number("226.796185"));
    CHECK(grams("1 cup", butter) == 227);
    CHECK(grams("2", butter) == 226);
}

TEST_CASE("a portion scoop is its part of a US quart, weighed by the density") {
    // Institute of Child Nutrition, "Basics at a Glance" (chart; publisher from memory), and GNU units
    // scoop(n): No. 16 is a quarter cup, No. 8 a half, No. 6 two thirds, No. 12 a third
    Ingredient const flour = known("flour", {"125 g / cup"});
    CHECK(grams("#16 scoop", flour) == number("31.25"));
    CHECK(grams("#8 scoop", flour) == number("62.5"));
    CHECK(grams("#6 scoop", flour) == Number(250) / 3);
    CHECK(grams("3 x #12 scoop", flour) == 125);
    // No. 60: 4/60 of a cup. The chart's 3 1/4 tsp is 1.56 % more: 125 x 3.25/48 = 8.46 g
    CHECK(grams("#60 scoop", flour) == Number(25) / 3);
}

TEST_CASE("a volume without a density is refused, with what to write and where") {
    auto const refused = grams_of(quantity("1 cup"), known("rye flour", {}, "3"));
    REQUIRE(!refused);
    CHECK(refused.error().code == "missing-density");
    CHECK(refused.error().what ==
          "'rye flour' is measured by volume here, but its density is not known");
    CHECK(says(refused.error().help, "'rye flour: {density: ... g / cup}'"));
}

TEST_CASE("a count without the weight of one is refused, with what to write and where") {
    auto const refused = grams_of(quantity("3"), known("plum", {"150 g / cup"}));
    REQUIRE(!refused);
    CHECK(refused.error().code == "missing-weight");
    CHECK(says(refused.error().help, "'plum: {each: ... g}'"));
}

TEST_CASE("an hour is no amount of flour") {
    auto const refused = grams_of(quantity("1 h"), known("flour", {"125 g / cup"}, "1"));
    REQUIRE(!refused);
    CHECK(refused.error().code == "wrong-dimension");
}

TEST_CASE("supplies are counted and nothing else") {
    Ingredient box = known("box", {"1 g / cup"}, "20");
    box.kind = Ingredient::Kind::supply;
    CHECK(pieces_of(quantity("4 x 50"), box).value() == 200);
    CHECK(pieces_of(quantity("1 gross"), box).value() == 144);
    auto const refused = pieces_of(quantity("1 kg"), box);
    REQUIRE(!refused);
    CHECK(refused.error().code == "wrong-dimension");
}

TEST_CASE("what a formula makes is measured through its own density") {
    Formula curd;
    curd.name = "lemon curd";
    CHECK(grams_of(quantity("250 g"), curd).value() == 250);
    auto const unknown = grams_of(quantity("1 cup"), curd);
    REQUIRE(!unknown);
    CHECK(unknown.error().code == "missing-density");
    curd.densities.push_back(density("0.9 g / mL"));
    CHECK(grams_of(quantity("1 L"), curd).value() == 900);
    auto const counted = grams_of(quantity("2"), curd);
    REQUIRE(!counted);
    CHECK(counted.error().code == "wrong-dimension");
}

TEST_CASE(
    "the same mass in pounds and ounces, in kilograms or in cups of one density is one mass") {
    // 1 lb 4 oz = 20 oz = 566.9904625 g = 0.5669904625 kg
    Ingredient const flour = known("flour", {"5 oz / cup"});
    for (std::string_view const way : {"1 lb 4 oz", "20 oz", "566.9904625 g", "0.5669904625 kg",
                                       "4 cup", "1 US quart", "64 tbsp", "2 pints"}) {
        CAPTURE(way);
        CHECK(grams(way, flour) == number("566.9904625"));
    }
}

TEST_CASE("what is costed by the piece or by volume needs no weight, until a mass is wanted") {
    Ingredient shell = known("shell", {});
    shell.base = Dimension::count;
    CHECK(amount_in(quantity("4 x 25"), shell).value() == 100);
    CHECK(amount_in(quantity("24 g"), shell).error().code == "missing-weight");
    CHECK(amount_in(quantity("24 g"), shell).error().what ==
          "'shell' is bought by the piece, but the weight of one is not known");
    CHECK(amount_in(quantity("1 cup"), shell).error().code == "missing-density");
    CHECK(amount_in(quantity("1 kWh"), shell).error().code == "wrong-dimension");
    Ingredient vanilla = known("vanilla", {});
    vanilla.base = Dimension::volume;
    // the US teaspoon is 1/48 of 8 fl oz
    CHECK(amount_in(quantity("8 fl oz"), vanilla).value() ==
          48 * amount_in(quantity("1 tsp"), vanilla).value());
    CHECK(amount_in(quantity("1 g"), vanilla).error().what ==
          "'vanilla' is bought by volume, but its density is not known");
    CHECK(amount_in(quantity("2"), vanilla).error().code == "missing-weight");
}
