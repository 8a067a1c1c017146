#include "amounts.hpp"

#include <string>
#include <string_view>

using groat::Dimension;
using groat::find_unit;
using groat::mass_text;
using groat::Measures;
using groat::Number;
using groat::parse_density;
using groat::parse_quantity;

namespace {

struct Refusal {
    std::string code, what, help;
};

Refusal refusal(std::string_view text, Measures measures = Measures::us) {
    auto const read = parse_quantity(text, measures);
    CAPTURE(text);
    CHECK(!read);
    if (read) return {};
    CHECK(!read.error().help.empty());
    CHECK(read.error().at <= text.size());
    return {read.error().code, read.error().what, read.error().help};
}

} // namespace

TEST_CASE("a quantity is read as a recipe writes it") {
    struct Row {
        std::string_view written;
        Dimension dimension;
        std::string_view amount; ///< in g, mL, pieces, s, J, W, m
    };
    constexpr Row rows[] = {
        {"620 g", Dimension::mass, "620"},
        {"620g", Dimension::mass, "620"},
        {" 1.5 kg ", Dimension::mass, "1500"},
        {"2 3/4 cup", Dimension::volume, "650.617650375"}, // 2.75 x 236.5882365
        {"½ tsp", Dimension::volume, "2.464460796875"},
        {"2½ cups", Dimension::volume, "591.47059125"},
        {"1/2 lb", Dimension::mass, "226.796185"},
        {"1 lb 4 oz", Dimension::mass, "566.9904625"}, // 20 x 28.349523125
        {"5 lb 4 oz", Dimension::mass, "2381.3599425"},
        {"1 h 30 min", Dimension::time, "5400"},
        {"1 kg 250 g", Dimension::mass, "1250"},
        {"1 US gallon 2 US quart 1 US cup", Dimension::volume, "5914.7059125"}, // 25 cups
        {"3", Dimension::count, "3"},
        {"1/2", Dimension::count, "1/2"},
        {"15 dozen", Dimension::count, "180"},
        {"2 baker's dozen", Dimension::count, "26"},
        {"8 fl oz", Dimension::volume, "236.5882365"},
        {"2 imperial pint", Dimension::volume, "1136.5225"},
        {"1 label cup", Dimension::volume, "240"},
        {"2 sticks", Dimension::mass, "226.796185"},
        {"3 kWh", Dimension::energy, "10800000"},
        {"2.5 kW", Dimension::power, "2500"},
        {"12 km", Dimension::distance, "12000"},
        {"-5 g", Dimension::mass, "-5"},
        {"-1 lb 4 oz", Dimension::mass, "-566.9904625"}, // minus twenty ounces, not minus twelve
        {"0 g", Dimension::mass, "0"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.written);
        auto const read = parse_quantity(row.written, Measures::us);
        REQUIRE(read);
        CHECK(read->dimension == row.dimension);
        CHECK(read->amount == figure(row.amount));
    }
}

TEST_CASE("packs multiply what is in them, and nest") {
    CHECK(quantity("12 x 500 g") == quantity("6 kg"));
    CHECK(quantity("12x500g") == quantity("6 kg"));
    CHECK(quantity("12 × 500 g") == quantity("6 kg"));
    CHECK(quantity("4 x 12 x 500 g") == quantity("24 kg"));
    CHECK(quantity("6 x 1 lb 4 oz") == quantity("120 oz")); // the packs hold all of it
    CHECK(quantity("30 x 12") == quantity("360"));
    CHECK(quantity("2 x 15 dozen") == quantity("360"));
    CHECK(quantity("1/2 x 500 g") == quantity("250 g"));
    CHECK(quantity("12 x #60 scoop") == quantity("12 #60 scoops"));
}

TEST_CASE("a scoop is measured by its number") {
    CHECK(quantity("#16 scoop") == quantity("1/4 cup"));
    CHECK(quantity("2 #16 scoops") == quantity("1/2 cup"));
    CHECK(quantity("1 1/2 #8 scoop") == quantity("3/4 cup"));
    CHECK(quantity("#60 scoop").dimension == Dimension::volume);
    // a scoop is a scoop in every kitchen: it is a part of the US quart
    CHECK(quantity("#16 scoop", Measures::metric) == quantity("1/4 US cup"));
    CHECK(refusal("#0 scoop").code == "bad-scoop");
    CHECK(refusal("#201 scoop").code == "bad-scoop");
    CHECK(refusal("#60").help == "write '#60 scoop'");
    CHECK(refusal("#60 g").help == "write '#60 scoop'");
    CHECK(refusal("# scoop").code == "bad-number");
}

TEST_CASE("eggs of each class weigh what their law and their nutrient table say") {
    // USDA AMS 56: least net ounces for a dozen in the shell (as reprinted by K-State extension);
    // USDA SR28: 12 % shell (Refuse of 01123) and the weight of one without it
    struct Row {
        std::string_view dozen, in_shell, without, table;
    };
    constexpr Row rows[] = {
        {"30 oz", "70.8738", "62.37", "63"}, // jumbo
        {"27 oz", "63.7864", "56.13", "56"}, // extra large
        {"24 oz", "56.6990", "49.90", "50"}, // large: 24 x 28.349523125 / 12
        {"21 oz", "49.6117", "43.66", "44"}, // medium
        {"18 oz", "42.5243", "37.42", "38"}, // small
    };
    for (Row const& row : rows) {
        CAPTURE(row.dozen);
        Number const egg = quantity(row.dozen).amount / quantity("1 dozen").amount;
        Number const edible = egg * figure("0.88");
        CHECK(groat::decimal(egg, 4) == row.in_shell);
        CHECK(groat::decimal(edible, 2) == row.without);
        CHECK(edible - figure(row.table) < 1);
        CHECK(figure(row.table) - edible < 1);
    }
    // SR28 01123: "1 cup (4.86 large eggs)" is 243 g, and a white of 33 g and a yolk of 17 g make one
    CHECK(figure("4.86") * quantity("50 g").amount == quantity("243 g").amount);
}

TEST_CASE("a stick of butter is a quarter pound, not the 113 g of a rounded table") {
    // SR28 01145 prints 113 g a stick and 227 g a cup
    CHECK(quantity("2 sticks") == quantity("8 oz"));
    CHECK(quantity("2 sticks").amount == figure("226.796185"));
    CHECK(quantity("8 oz").dimension == Dimension::mass); // 8 oz of cream cheese are no cup
}

TEST_CASE("salt weighed in ounces is a share of the flour") {
    // "Baker's percentages" slides (slideshare 10704308): flour 5 lb 4 oz, water 3 lb 8 oz, salt 1.75 oz
    Number const flour = quantity("5 lb 4 oz").amount;
    CHECK(quantity("3 lb 8 oz").amount / flour == Number(2) / 3);
    CHECK(quantity("1.75 oz").amount / flour == Number(1) / 48); // 2.083333 %
    // a can of "13 oz" of evaporated milk is printed as 369 g (SR28 01096): 13.016 oz
    CHECK(groat::decimal(quantity("369 g").amount / quantity("1 oz").amount, 3) == "13.016");
}

TEST_CASE("the unit that was written is remembered, the first where there are two") {
    CHECK(quantity("2 cups").unit == find_unit("cup", Measures::us));
    CHECK(quantity("1 lb 4 oz").unit == find_unit("lb", Measures::us));
    CHECK(quantity("3").unit == find_unit("each", Measures::us));
    CHECK(quantity("#60 scoop").unit == nullptr);
}

TEST_CASE("a unit that nobody knows is answered with the nearest one") {
    Refusal const missed = refusal("2 cusp");
    CHECK(missed.code == "unknown-unit");
    CHECK(missed.what == "'cusp' is not a unit");
    CHECK(missed.help == "did you mean 'cup'?");
    CHECK(refusal("3 galon").help == "did you mean 'gallon'?");
    CHECK(refusal("3 xyzzy").help.starts_with("units are g, kg, oz"));
    auto const read = parse_quantity("1 lb 4 uz", Measures::us);
    REQUIRE(!read);
    CHECK(read.error().at == 7);
    CHECK(read.error().length == 2);
}

TEST_CASE("where a kitchen has no such measure, the others are named") {
    Refusal const pint = refusal("1 pint", Measures::metric);
    CHECK(pint.what == "'pint' is not a unit");
    CHECK(pint.help == "these measures have no such unit; say 'US pint' or 'imperial pint'");
    CHECK(refusal("8 fl oz", Measures::australian).help ==
          "these measures have no such unit; say 'US fl oz' or 'imperial fl oz'");
}

TEST_CASE("a metric cup is refused with millilitres, not with a length") {
    // 250 mL in GNU Units, 240 mL in UCUM
    Refusal const cup = refusal("1 metric cup");
    CHECK(cup.code == "unknown-unit");
    CHECK(cup.help.find("metre") == std::string::npos);
    CHECK(cup.help.find("meter") == std::string::npos);
    CHECK(cup.help.find("mL") != std::string::npos);
}

TEST_CASE("what is not a quantity is refused with what is") {
    CHECK(refusal("").what == "the quantity is empty");
    CHECK(refusal("   ").what == "the quantity is empty");
    CHECK(refusal("some flour").what == "'some flour' is not a quantity");
    CHECK(refusal("g 620").code == "bad-quantity");
    CHECK(refusal("3 12 g").help == "write a mixed number as 2 1/4, packs as 12 x 500 g");
    CHECK(refusal("1,5 kg").help.find("point") != std::string::npos);
    CHECK(refusal("1e3 g").help == "powers of ten are not read; write the number out");
    CHECK(refusal("1/0 cup").help == "a fraction cannot have 0 below the line");
    CHECK(refusal("1 lb, 4 oz").code == "bad-number");
    CHECK(refusal("2 cups flour").code == "bad-number");
    CHECK(refusal("1 g / cup").code == "bad-number");
    CHECK(refusal(std::string(1'000'000, '9') + " g").code == "number-too-long");
    CHECK(refusal("1 " + std::string(1'000'000, 'g')).what.size() < 100);
}

TEST_CASE("parts of one quantity measure one thing, from larger to smaller") {
    CHECK(refusal("1 lb 1 cup").what == "'1 lb 1 cup' adds a volume to a mass");
    CHECK(refusal("1 lb 4").what == "'1 lb 4' adds a count to a mass");
    CHECK(refusal("4 oz 1 lb").what == "'4 oz 1 lb' does not go from larger to smaller units");
    CHECK(refusal("1 lb 1 lb").code == "bad-quantity");
    CHECK(refusal("1 cup #16 scoop").code == "bad-quantity");
}

TEST_CASE("a dash between two parts is not a minus") {
    // read as a subtraction, 1 lb -4 oz would be 12 oz
    CHECK(!parse_quantity("1 lb -4 oz", Measures::us));
    CHECK(!parse_quantity("1 lb - 4 oz", Measures::us));
}

TEST_CASE("packs stand in front and hold something") {
    CHECK(refusal("500 g 12 x 1 g").what == "'500 g 12 x 1 g' multiplies in the middle");
    CHECK(refusal("12 ×").what == "nothing follows the 'x'");
    CHECK(refusal("12 x").what == "nothing follows the 'x'");
    CHECK(refusal("x 500 g").code == "bad-quantity");
}

TEST_CASE("any text at all is read or refused with a sentence") {
    Draw draw(21);
    constexpr std::string_view pool[] = {"1",   "12", " ", " ",     "g",   "lb",  "oz",
                                         "cup", "x",  "×", "/",     "#",   ".",   "-",
                                         "½",   "é",  ",", "scoop", "US ", "\xFF"};
    for (int i = 0; i < 20'000; ++i) {
        std::string text;
        for (auto length = draw.whole(0, 9); length > 0; --length) text += pool[draw.whole(0, 19)];
        auto const read = parse_quantity(text, Measures::us);
        if (read) continue;
        CAPTURE(text);
        CHECK(!read.error().what.empty());
        CHECK(!read.error().help.empty());
    }
}

TEST_CASE("a quantity in any unit is that many times its factor") {
    Draw draw(22);
    for (std::string_view const word : {"g", "lb", "oz", "cup", "tsp", "US gallon", "dozen", "kWh"})
        for (int i = 0; i < 100; ++i) {
            Number const amount = draw.number(0, 100);
            std::string const text = groat::exact(amount) + ' ' + std::string(word);
            CHECK(quantity(text).amount == amount * find_unit(word, Measures::us)->factor);
        }
}

TEST_CASE("a density is a mass for one unit of volume") {
    // USDA SR28 20081: a cup of flour weighs 125 g
    auto const flour = parse_density("125 g / cup", Measures::us);
    REQUIRE(flour);
    CHECK(flour->grams_per_millilitre == 125 / figure("236.5882365"));
    CHECK(flour->per == find_unit("cup", Measures::us));
    CHECK(parse_density("125 g/cup", Measures::us)->grams_per_millilitre ==
          flour->grams_per_millilitre);
    CHECK(parse_density("125 g per cup", Measures::us)->grams_per_millilitre ==
          flour->grams_per_millilitre);
    CHECK(parse_density("950 g per L", Measures::us)->grams_per_millilitre == figure("0.95"));
    CHECK(parse_density("4 1/2 oz / cup", Measures::us)->grams_per_millilitre ==
          figure("4.5") * figure("28.349523125") / figure("236.5882365"));
    // SR28 14411: a litre of water weighs 1000 g
    CHECK(parse_density("1 kg / L", Measures::us)->grams_per_millilitre == 1);
}

TEST_CASE("a cup of flour weighs less in a kitchen whose cup is larger, gram for millilitre") {
    auto const us = parse_density("125 g / cup", Measures::us);
    auto const australian = parse_density("125 g / cup", Measures::australian);
    CHECK(australian->grams_per_millilitre < us->grams_per_millilitre);
    CHECK(australian->grams_per_millilitre == figure("0.5"));
}

TEST_CASE("what is no mass for one unit of volume is no density") {
    for (std::string_view const text :
         {"", "125 g", "125 g /", "/ cup", "125 / cup", "1 cup / 125 g", "125 g / kg", "0 g / cup",
          "-5 g / cup", "125 g / 2 cup", "125 g cup", "125 g / cupp", "1 L / L",
          "125 g / cup / cup"}) {
        CAPTURE(text);
        auto const read = parse_density(text, Measures::us);
        CHECK(!read);
        if (!read) CHECK(!read.error().help.empty());
    }
    CHECK(parse_density("125 g / cupp", Measures::us).error().help == "did you mean 'cup'?");
}

TEST_CASE("a mass is shown as a person weighs it") {
    CHECK(mass_text(1234) == "1.234 kg");
    CHECK(mass_text(12345) == "12.34 kg"); // 12.345, a tie to the even digit
    CHECK(mass_text(500) == "500 g");
    CHECK(mass_text(figure("226.796185")) == "227 g");
    CHECK(mass_text(figure("49.9")) == "49.9 g");
    CHECK(mass_text(figure("2.464")) == "2.46 g");
    CHECK(mass_text(figure("0.5")) == "0.5 g");
    CHECK(mass_text(0) == "0 g");
    CHECK(mass_text(-250) == "-250 g");
    CHECK(mass_text(1000) == "1 kg");
    CHECK(mass_text(1500) == "1.5 kg");
}

TEST_CASE("a sign that is no letter gets the list of units, not a guess") {
    for (std::string const sign : {"%", "&", "$", "€"}) {
        auto const flaw = parse_quantity("5 " + sign, Measures::us).error();
        CHECK(flaw.what.find("'" + sign) != std::string::npos);
        CHECK(flaw.help.find("did you mean") == std::string::npos);
    }
    CHECK(parse_quantity("5 Q", Measures::us).error().help.find("did you mean") !=
          std::string::npos);
}
