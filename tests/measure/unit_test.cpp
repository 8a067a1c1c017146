#include "amounts.hpp"

#include <groat/measure/unit.hpp>

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <sys/wait.h>

using groat::Dimension;
using groat::find_unit;
using groat::Measures;
using groat::Number;
using groat::scoop_volume;
using groat::Unit;
using groat::unit_words;

namespace {

constexpr Measures all_measures[] = {Measures::us, Measures::label, Measures::metric,
                                     Measures::australian, Measures::imperial};

Number factor(std::string_view word, Measures measures = Measures::us) {
    Unit const* const unit = find_unit(word, measures);
    CAPTURE(word);
    REQUIRE(unit != nullptr);
    return unit->factor;
}

/// What a program wrote, up to its first line end, and whether it ended well.
struct Answer {
    std::string text;
    bool is_good = false;
};

Answer answer_of(std::string const& command) {
    Answer answer;
    std::FILE* const pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return answer;
    for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe))
        answer.text += static_cast<char>(c);
    int const status = pclose(pipe);
    answer.is_good = WIFEXITED(status) && WEXITSTATUS(status) == 0;
    answer.text.resize(std::min(answer.text.find('\n'), answer.text.size()));
    return answer;
}

/// How many `to` the program `units` finds in one `from`.
Answer in_units(std::string const& from, std::string const& to) {
    return answer_of("LC_ALL=C units -t -o '%.15g' '" + from + "' '" + to + "' 2>&1");
}

bool units_is_installed() { return answer_of("LC_ALL=C units --version 2>&1").is_good; }

std::string const install_units =
    "the program `units` (GNU Units, our outside oracle) is not here: install Debian's package `units` "
    "(apt-get install units) and run this test again";

struct Asked {
    std::string_view from, to;
};

/// Every unit by its printed name, in the words of GNU Units. Its `cup`, `pint` and `gallon` follow the
/// country of its user, so each is asked for with its country.
std::map<std::string_view, Asked> const gnu_words = {
    {"g", {"gram", "g"}},
    {"mg", {"milligram", "g"}},
    {"kg", {"kilogram", "g"}},
    {"oz", {"ounce", "g"}},
    {"lb", {"pound", "g"}},
    {"stick", {"stickbutter", "g"}},
    {"mL", {"milliliter", "ml"}},
    {"cL", {"centiliter", "ml"}},
    {"dL", {"deciliter", "ml"}},
    {"L", {"liter", "ml"}},
    {"US tsp", {"usteaspoon", "ml"}},
    {"US tbsp", {"ustablespoon", "ml"}},
    {"US fl oz", {"usfluidounce", "ml"}},
    {"US cup", {"uscup", "ml"}},
    {"US pint", {"uspint", "ml"}},
    {"US quart", {"usquart", "ml"}},
    {"US gallon", {"usgallon", "ml"}},
    {"label tsp",
     {"1|3 legaltablespoon", "ml"}}, // it knows cup and tablespoon of 21 CFR 101.9 only
    {"label tbsp", {"legaltablespoon", "ml"}},
    {"label fl oz", {"1|8 legalcup", "ml"}},
    {"label cup", {"legalcup", "ml"}},
    {"250 mL cup", {"metriccup", "ml"}},
    {"20 mL tbsp", {"australiatablespoon", "ml"}},
    {"imperial fl oz", {"brfluidounce", "ml"}},
    {"imperial cup", {"brcup", "ml"}},
    {"imperial pint", {"brpint", "ml"}},
    {"imperial quart", {"brquart", "ml"}},
    {"imperial gallon", {"brgallon", "ml"}},
    {"each", {"1", "1"}},
    {"dozen", {"dozen", "1"}},
    {"baker's dozen", {"bakersdozen", "1"}},
    {"gross", {"gross", "1"}},
    {"s", {"second", "s"}},
    {"min", {"minute", "s"}},
    {"h", {"hour", "s"}},
    {"day", {"day", "s"}},
    {"J", {"joule", "J"}},
    {"MJ", {"megajoule", "J"}},
    {"kWh", {"kilowatt hour", "J"}},
    {"W", {"watt", "W"}},
    {"kW", {"kilowatt", "W"}},
    {"m", {"meter", "m"}},
    {"cm", {"centimeter", "m"}},
    {"mm", {"millimeter", "m"}},
    {"in", {"inch", "m"}},
    {"km", {"kilometer", "m"}},
    {"mi", {"mile", "m"}},
};

std::set<Unit const*> every_unit() {
    std::set<Unit const*> units;
    for (Measures const measures : all_measures)
        for (std::string const& word : unit_words(measures))
            units.insert(find_unit(word, measures));
    return units;
}

} // namespace

TEST_CASE("the units of trade are those of the law, to the last digit") {
    // NIST Handbook 44 appendix C and the yard and pound agreement of 1959, UK Weights and Measures Act 1985
    // schedule 1 (from memory); the digits as GNU Units 2.22 and UCUM 2.2 have them
    struct Row {
        std::string_view word, base_units;
    };
    constexpr Row rows[] = {
        {"lb", "453.59237"},
        {"oz", "28.349523125"},
        {"stick", "113.3980925"},
        {"US gallon", "3785.411784"},
        {"US quart", "946.352946"},
        {"US pint", "473.176473"},
        {"US cup", "236.5882365"},
        {"US fl oz", "29.5735295625"},
        {"US tbsp", "14.78676478125"},
        {"US tsp", "4.92892159375"},
        {"imperial gallon", "4546.09"},
        {"imperial quart", "1136.5225"},
        {"imperial pint", "568.26125"},
        {"imperial cup", "284.130625"},
        {"imperial fl oz", "28.4130625"},
        {"dozen", "12"},
        {"baker's dozen", "13"},
        {"gross", "144"},
        {"mi", "1609.344"},
        {"kWh", "3600000"},
    };
    for (Row const& row : rows) CHECK(factor(row.word) == figure(row.base_units));
}

TEST_CASE("each unit follows from its definition") {
    CHECK(factor("lb") == 7000 * figure("64.79891") / 1000); // grains in milligrams
    CHECK(factor("oz") * 16 == factor("lb"));
    CHECK(factor("stick") * 4 == factor("lb"));
    CHECK(factor("US gallon") ==
          231 * figure("2.54") * figure("2.54") * figure("2.54")); // cubic inches
    CHECK(factor("US quart") * 4 == factor("US gallon"));
    CHECK(factor("US pint") * 8 == factor("US gallon"));
    CHECK(factor("US cup") * 16 == factor("US gallon"));
    CHECK(factor("US fl oz") * 128 == factor("US gallon"));
    CHECK(factor("US tbsp") * 2 == factor("US fl oz"));
    CHECK(factor("US tsp") * 3 == factor("US tbsp"));
    CHECK(factor("imperial quart") * 4 == factor("imperial gallon"));
    CHECK(factor("imperial pint") * 8 == factor("imperial gallon"));
    CHECK(factor("imperial cup") * 2 == factor("imperial pint"));
    CHECK(factor("imperial fl oz") * 160 == factor("imperial gallon"));
    CHECK(factor("US pint") / 4 == figure("118.29411825")); // a gill
}

TEST_CASE("GNU Units gives every unit the same value") {
    if (!units_is_installed()) FAIL(install_units);
    for (Unit const* const unit : every_unit()) {
        CAPTURE(unit->name);
        auto const asked = gnu_words.find(unit->name);
        if (asked == gnu_words.end()) {
            FAIL_CHECK("this unit has no word of GNU Units in the table above: add it");
            continue;
        }
        Answer const answer =
            in_units(std::string(asked->second.from), std::string(asked->second.to));
        CAPTURE(answer.text);
        CHECK(answer.is_good);
        auto const value = groat::parse_number(answer.text);
        REQUIRE(value);
        CHECK(unit->factor == *value);
    }
    CHECK(gnu_words.size() == every_unit().size());
}

TEST_CASE("GNU Units gives every scoop the same size, to its fifteen digits") {
    if (!units_is_installed()) FAIL(install_units);
    for (int const number : {6, 8, 10, 12, 16, 20, 24, 30, 40, 50, 60, 70, 100}) {
        CAPTURE(number);
        Answer const answer = in_units("scoop(" + std::to_string(number) + ")", "ml");
        auto const value = groat::parse_number(answer.text);
        REQUIRE(value);
        Number const off = *scoop_volume(number) / *value - 1;
        CHECK(off < figure("0.00000000000001"));
        CHECK(off > figure("-0.00000000000001"));
    }
}

TEST_CASE("nutrition labels have round measures of their own") {
    // 21 CFR 101.9(b)(5)(viii)
    CHECK(factor("tsp", Measures::label) == 5);
    CHECK(factor("tbsp", Measures::label) == 15);
    CHECK(factor("fl oz", Measures::label) == 30);
    CHECK(factor("cup", Measures::label) == 240);
    CHECK(factor("label cup", Measures::us) == 240);
    CHECK(factor("pint", Measures::label) == factor("US pint")); // which the rule does not name
}

TEST_CASE("a bare cup or spoon is the one of the kitchen") {
    struct Row {
        std::string_view word, us, metric, australian, imperial;
    };
    constexpr Row rows[] = {
        {"cup", "236.5882365", "250", "250", "284.130625"},
        {"tbsp", "14.78676478125", "15", "20", "15"},
        {"tsp", "4.92892159375", "5", "5", "5"},
    };
    for (Row const& row : rows) {
        CHECK(factor(row.word, Measures::us) == figure(row.us));
        CHECK(factor(row.word, Measures::metric) == figure(row.metric));
        CHECK(factor(row.word, Measures::australian) == figure(row.australian));
        CHECK(factor(row.word, Measures::imperial) == figure(row.imperial));
    }
    CHECK(factor("pint", Measures::us) == figure("473.176473"));
    CHECK(factor("pint", Measures::imperial) == figure("568.26125"));
    // metric kitchens have no pints of their own, so none is guessed
    CHECK(find_unit("pint", Measures::metric) == nullptr);
    CHECK(find_unit("fl oz", Measures::australian) == nullptr);
}

TEST_CASE("an Australian tablespoon holds a third more than a US one") {
    // 20 / 14.78676478125 = 1.3526: the spread that a recipe without its country carries
    CHECK(groat::decimal(factor("tbsp", Measures::australian) / factor("tbsp", Measures::us), 4) ==
          "1.3526");
}

TEST_CASE("nobody's metric cup is taken for anybody's") {
    // 250 mL in GNU Units and 240 mL in UCUM: the name alone does not say which
    for (Measures const measures : all_measures) {
        CHECK(find_unit("metric cup", measures) == nullptr);
        CHECK(find_unit("metric tbsp", measures) == nullptr);
    }
}

TEST_CASE("an ounce is a weight and a fluid ounce a volume in every kitchen") {
    for (Measures const measures : all_measures) {
        CHECK(find_unit("oz", measures)->dimension == Dimension::mass);
        CHECK(find_unit("ounces", measures)->factor == figure("28.349523125"));
    }
    CHECK(find_unit("fl oz", Measures::us)->dimension == Dimension::volume);
    CHECK(factor("fl oz", Measures::us) > factor("fl oz", Measures::imperial));
}

TEST_CASE("words that other programs misread are not units here") {
    // GNU Units reads them with a prefix: atto-US-cup, pico-inch
    for (std::string_view const word :
         {"auscup", "pinch", "acup", "", " ", "g ", "flour", "T", "t", "c"}) {
        CAPTURE(word);
        CHECK(find_unit(word, Measures::us) == nullptr);
    }
}

TEST_CASE("every spelling of a unit is that unit") {
    struct Row {
        std::string_view one, other;
    };
    constexpr Row rows[] = {
        {"g", "grams"},       {"kg", "kilos"},        {"lb", "lbs"},      {"lb", "pounds"},
        {"oz", "ounces"},     {"mL", "ml"},           {"L", "litres"},    {"l", "liters"},
        {"tsp", "teaspoons"}, {"tbsp", "tablespoon"}, {"cup", "cups"},    {"fl oz", "fluid ounces"},
        {"pint", "pt"},       {"quart", "qt"},        {"gallon", "gal"},  {"each", "pcs"},
        {"dozen", "doz"},     {"h", "hours"},         {"min", "minutes"}, {"mi", "miles"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.other);
        CHECK(find_unit(row.one, Measures::us) != nullptr);
        CHECK(find_unit(row.one, Measures::us) == find_unit(row.other, Measures::us));
    }
}

TEST_CASE("capitals count only where they would be another unit") {
    // as find_unit promises
    CHECK(find_unit("Cup", Measures::us) == find_unit("cup", Measures::us));
    CHECK(find_unit("TBSP", Measures::us) == find_unit("tbsp", Measures::us));
    CHECK(find_unit("Grams", Measures::us) == find_unit("g", Measures::us));
    CHECK(find_unit("Lb", Measures::us) == find_unit("lb", Measures::us));
    CHECK(find_unit("KG", Measures::us) == find_unit("kg", Measures::us));
    CHECK(find_unit("Oz", Measures::us) == find_unit("oz", Measures::us));
    // a millijoule is no megajoule, a milliwatt no megawatt
    CHECK(find_unit("mJ", Measures::us) == nullptr);
    CHECK(find_unit("mj", Measures::us) == nullptr);
    CHECK(find_unit("mW", Measures::us) == nullptr);
}

TEST_CASE("every word offered as a suggestion can be typed behind a number") {
    for (Measures const measures : all_measures)
        for (std::string const& word : unit_words(measures)) {
            CAPTURE(word);
            auto const read = groat::parse_quantity("2 " + word, measures);
            CHECK(read.has_value());
            if (!read) continue;
            CHECK(read->unit == find_unit(word, measures));
            CHECK(read->amount == 2 * find_unit(word, measures)->factor);
        }
}

TEST_CASE("a scoop's number says how many of it fill a US quart") {
    // chart "Basics at a Glance" of the Institute of Child Nutrition (publisher from memory); the exact
    // column is 192 tsp / number, the last one how far the chart's household measure is off
    struct Row {
        int number;
        std::string_view teaspoons, fluid_ounces, millilitres, chart, off_percent;
    };
    constexpr Row rows[] = {
        {6, "32", "5.3333", "157.7255", "2/3 cup", "0.00"},
        {8, "24", "4", "118.2941", "1/2 cup", "0.00"},
        {10, "19.2", "3.2", "94.6353", "3/8 cup", "-6.25"},
        {12, "16", "2.6667", "78.8627", "1/3 cup", "0.00"},
        {16, "12", "2", "59.1471", "1/4 cup", "0.00"},
        {20, "9.6", "1.6", "47.3176", "3 1/3 tbsp", "4.17"},
        {24, "8", "1.3333", "39.4314", "2 2/3 tbsp", "0.00"},
        {30, "6.4", "1.0667", "31.5451", "2 tbsp", "-6.25"},
        {40, "4.8", "0.8", "23.6588", "1 2/3 tbsp", "4.17"},
        {50, "3.84", "0.64", "18.9271", "3 3/4 tsp", "-2.34"},
        {60, "3.2", "0.5333", "15.7725", "3 1/4 tsp", "1.56"},
        {70, "2.7429", "0.4571", "13.5193", "2 3/4 tsp", "0.26"},
        {100, "1.92", "0.32", "9.4635", "2 tsp", "4.17"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.number);
        Number const volume = *scoop_volume(row.number);
        CHECK(volume * row.number == factor("US quart"));
        CHECK(groat::decimal_at_most(volume / factor("US tsp"), 4) == row.teaspoons);
        CHECK(groat::decimal_at_most(volume / factor("US fl oz"), 4) == row.fluid_ounces);
        CHECK(groat::decimal(volume, 4) == row.millilitres);
        Number const off = quantity(row.chart).amount / volume - 1;
        CHECK(groat::decimal(off * 100, 2) == row.off_percent);
    }
}

TEST_CASE("scoops are numbered from 1 to 200") {
    CHECK(*scoop_volume(1) == factor("US quart"));
    CHECK(scoop_volume(200));
    for (int const number : {0, -16, 201}) {
        auto const refused = scoop_volume(number);
        REQUIRE(!refused);
        CHECK(refused.error().code == "bad-scoop");
    }
    CHECK(scoop_volume(0).error().what == "there is no scoop number 0");
}

TEST_CASE("every dimension has a word for messages") {
    CHECK(to_text(Dimension::mass) == "mass");
    CHECK(to_text(Dimension::volume) == "volume");
    CHECK(to_text(Dimension::count) == "count");
    CHECK(to_text(Dimension::time) == "time");
    CHECK(to_text(Dimension::energy) == "energy");
    CHECK(to_text(Dimension::power) == "power");
    CHECK(to_text(Dimension::distance) == "distance");
}
