#include <groat/trial/conversion.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

namespace {

Convertible thing(std::string_view name, std::initializer_list<std::string_view> rows,
                  std::string_view each = "") {
    Convertible result;
    result.name = name;
    for (std::string_view const row : rows) result.densities.push_back(density(row));
    if (!each.empty()) result.grams_each = quantity(each).amount;
    result.where_to_write = "ingredients.yaml";
    return result;
}

Result<Conversion> converted(std::string_view amount, std::string_view unit,
                             Convertible const& of = {}) {
    return convert(quantity(amount), parse_unit(unit, Measures::us).value(), of);
}

std::string refusal(std::string_view amount, std::string_view unit, Convertible const& of = {}) {
    auto const conversion = converted(amount, unit, of);
    return conversion ? "converted" : std::string(conversion.error().code);
}

} // namespace

TEST_CASE("within a dimension a conversion takes no book") {
    // NIST Handbook 44, appendix C (from memory), as GNU Units 2.22 has it
    CHECK(converted("1 lb", "g")->amount == number("453.59237"));
    CHECK(converted("1 cup", "mL")->amount == number("236.5882365"));
    CHECK(converted("2 h", "min")->amount == 120);
    CHECK(converted("12 in", "cm")->amount == number("30.48"));
    CHECK(converted("1 cup", "tbsp")->amount == 16);
    CHECK(converted("1 quart", "#24 scoop")->amount == 24);
    CHECK(converted("1 lb", "g")->facts.empty());
}

TEST_CASE("cups become grams as SR28 weighs them, and back") {
    // USDA SR28, 20081: flour, 1 cup = 125 g; 01123: a large egg 50 g, "1 cup (4.86 large eggs)" = 243 g
    Convertible const flour = thing("flour", {"125 g / cup"});
    CHECK(converted("2 3/4 cup", "g", flour)->amount == number("343.75"));
    CHECK(converted("343.75 g", "cup", flour)->amount == number("2.75"));
    Convertible const egg = thing("egg", {"243 g / cup"}, "50 g");
    CHECK(converted("1 cup", "each", egg)->amount == number("4.86"));
    CHECK(converted("3", "g", egg)->amount == 150);
    CHECK(converted("1 dozen", "cup", egg)->amount == number("600/243"));
}

TEST_CASE("each measure goes by its own row, whichever side it stands on") {
    // USDA SR28, 02047: salt, 1 tsp = 6.0 g, 1 cup = 292 g, which is not 48 times as much
    Convertible const salt = thing("salt", {"6 g / tsp", "292 g / cup"});
    CHECK(converted("1 cup", "g", salt)->amount == 292);
    CHECK(converted("292 g", "cup", salt)->amount == 1);
    CHECK(converted("6 g", "tsp", salt)->amount == 1);
    CHECK(converted("1 tbsp", "g", salt)->amount == 18); // no row of its own: the first
}

TEST_CASE("a conversion says which facts it went by") {
    Convertible egg = thing("egg", {"243 g / cup"}, "50 g");
    egg.densities.front().origin = {1, 7, 13, 11};
    egg.grams_each_origin = {1, 8, 9, 4};
    auto const conversion = converted("1 cup", "each", egg).value();
    REQUIRE(conversion.facts.size() == 2);
    CHECK(conversion.facts[0].density.has_value());
    CHECK(conversion.facts[0].origin.line == 7);
    CHECK(!conversion.facts[1].density.has_value());
    CHECK(conversion.facts[1].origin.line == 8);
}

TEST_CASE("what the books do not say is said to be missing, and where to write it") {
    auto const no_density = converted("1 cup", "g", thing("plum", {}));
    REQUIRE(!no_density);
    CHECK(no_density.error().code == "missing-density");
    CHECK(says(no_density.error().help, "'plum: {density: ... g / cup}' in ingredients.yaml"));
    auto const no_weight = converted("3", "g", thing("plum", {"150 g / cup"}));
    REQUIRE(!no_weight);
    CHECK(no_weight.error().code == "missing-weight");
    CHECK(says(no_weight.error().help, "'plum: {each: ... g}'"));
}

TEST_CASE("of nothing in particular a volume has no weight") {
    CHECK(refusal("1 cup", "g") == "of-what");
    CHECK(refusal("3", "g") == "of-what");
}

TEST_CASE("time and mass, length and volume never meet") {
    Convertible const flour = thing("flour", {"125 g / cup"}, "1 g");
    CHECK(refusal("1 h", "g", flour) == "wrong-dimension");
    CHECK(refusal("1 kg", "kWh", flour) == "wrong-dimension");
    CHECK(refusal("1 m", "cup", flour) == "wrong-dimension");
}

TEST_CASE("supplies are counted, and a formula's pieces are weighed by its cost") {
    Book book = a_book();
    supply(book, "box", "100", "40.00");
    CHECK(refusal("3", "dozen", convertible(book.ingredients.front())) == "converted");
    CHECK(refusal("3", "g", convertible(book.ingredients.front())) == "is-supply");
    food(book, "flour", "1 kg", "1.00");
    Formula& dough = formula(book, "dough", {{"flour", "1 kg"}});
    CHECK(refusal("3", "g", convertible(dough)) == "missing-weight");
    CHECK(refusal("1 cup", "g", convertible(dough)) == "missing-density");
    dough.densities.push_back(density("1.15 g / mL"));
    CHECK(converted("1 L", "g", convertible(dough))->amount == 1150);
}

TEST_CASE("a unit is a unit, not an amount") {
    auto const code = [](std::string_view text) {
        auto const unit = parse_unit(text, Measures::us);
        return unit ? std::string("read") : unit.error().code;
    };
    CHECK(code("cup") == "read");
    CHECK(code(" fl oz ") == "read");
    CHECK(code("#60 scoop") == "read");
    CHECK(code("") == "bad-unit");
    CHECK(code("5 g") == "bad-unit");
    CHECK(code("-g") == "bad-unit");
    CHECK(code("cupp") == "unknown-unit");
    CHECK(code("g oz") != "read");
}

TEST_CASE("there and back is where one started, whatever the units") {
    Convertible const honey = thing("honey", {"339 g / cup", "21 g / tbsp"}, "14 g");
    constexpr std::string_view units[] = {"g",    "kg",  "oz", "lb",    "mL",   "cup",
                                          "tbsp", "tsp", "L",  "fl oz", "each", "dozen"};
    for (std::string_view const from : units) {
        for (std::string_view const to : units) {
            Number const amount = number("7 3/8");
            Quantity const start = parse_unit(from, Measures::us).value();
            Quantity const unit = parse_unit(to, Measures::us).value();
            Number const there =
                convert({start.amount * amount, start.dimension, start.unit}, unit, honey)->amount;
            Number const back =
                convert({unit.amount * there, unit.dimension, unit.unit}, start, honey)->amount;
            CHECK(back == amount);
        }
    }
}
