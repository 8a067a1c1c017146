#include <groat/measure/household.hpp>

#include "amounts.hpp"

#include <string>
#include <string_view>
#include <vector>

using namespace groat;

namespace {

std::string in_kitchen(Number const& millilitres, Measures measures = Measures::us) {
    auto const measure = nearest_measure(millilitres, kitchen_measures(measures));
    return measure ? to_text(*measure) : "nothing";
}

std::string of_weight(std::string_view grams, std::vector<std::string_view> const& rows,
                      Measures measures = Measures::us) {
    std::vector<Density> densities;
    for (std::string_view const row : rows)
        densities.push_back(parse_density(row, measures).value());
    auto const measure =
        nearest_measure(figure(grams), kitchen_measures(densities, measures).value());
    return measure ? to_text(*measure) : "nothing";
}

} // namespace

TEST_CASE("scoops hold the cups and spoons that the trade's chart gives them") {
    // "Basics at a Glance" (Institute of Child Nutrition), a copy of its chart: No. 6 is 2/3 cup, 8 is 1/2,
    // 12 is 1/3, 16 is 1/4 cup, each exactly; 24 is 2 2/3 tbsp, of which the 2/3 are two teaspoons; 60 is
    // 3 1/4 tsp, a tablespoon and a quarter
    CHECK(in_kitchen(scoop_volume(6).value()) == "2/3 cup");
    CHECK(in_kitchen(scoop_volume(8).value()) == "1/2 cup");
    CHECK(in_kitchen(scoop_volume(12).value()) == "1/3 cup");
    CHECK(in_kitchen(scoop_volume(16).value()) == "1/4 cup");
    CHECK(in_kitchen(scoop_volume(24).value()) == "2 tbsp + 2 tsp");
    CHECK(in_kitchen(scoop_volume(60).value()) == "1 tbsp + 1/4 tsp");
}

TEST_CASE("what a measure is off by is known, and rough above two per cent") {
    // the chart's 3 1/4 tsp for No. 60 are 1.56 % above 3.2 tsp (1/64)
    auto const kitchen = kitchen_measures(Measures::us);
    auto const small = nearest_measure(scoop_volume(60).value(), kitchen).value();
    CHECK(small.error == figure("1/64"));
    CHECK(!small.is_rough());
    // 1/8 tsp for 0.16 tsp: 0.125 / 0.16 = 25/32
    auto const smallest = nearest_measure(quantity("0.16 tsp").amount, kitchen).value();
    CHECK(smallest.error == figure("-7/32"));
    CHECK(smallest.is_rough());
}

TEST_CASE("weights come back as the measures that SR28 gives them for") {
    // USDA SR28: flour 20081 1 cup = 125 g; butter 01145 1 cup = 227 g, 1 tbsp = 14.2 g; sugar 19335
    // 1 cup = 200 g, 1 tsp = 4.2 g; salt 02047 1 tsp = 6 g, 1 tbsp = 18 g; vanilla 02050 1 tsp = 4.2 g
    CHECK(of_weight("343.75", {"125 g / cup"}) == "2 3/4 cup");
    CHECK(of_weight("227", {"227 g / cup", "14.2 g / tbsp"}) == "1 cup");
    CHECK(of_weight("14.2", {"227 g / cup", "14.2 g / tbsp"}) == "1 tbsp");
    CHECK(of_weight("4.2", {"200 g / cup", "4.2 g / tsp"}) == "1 tsp");
    CHECK(of_weight("18", {"6 g / tsp", "18 g / tbsp"}) == "1 tbsp");
    CHECK(of_weight("3", {"6 g / tsp", "18 g / tbsp"}) == "1/2 tsp");
}

TEST_CASE("one measure is enough where it comes within two per cent") {
    // 3/4 cup are 93.75 g; 95 g are 1.3 % more; 109.375 g are 7/8 cup, and want two spoons on top
    CHECK(of_weight("95", {"125 g / cup"}) == "3/4 cup");
    CHECK(of_weight("109.375", {"125 g / cup"}) == "3/4 cup + 2 tbsp");
}

TEST_CASE("of equal measures the largest is taken") {
    CHECK(in_kitchen(quantity("12 tsp").amount) == "1/4 cup");
    CHECK(in_kitchen(quantity("3 tsp").amount) == "1 tbsp");
    CHECK(in_kitchen(quantity("6 tbsp").amount) == "6 tbsp");
    CHECK(in_kitchen(quantity("2 1/4 tsp").amount) == "2 1/4 tsp");
    CHECK(in_kitchen(quantity("1/8 tsp").amount) == "1/8 tsp");
}

TEST_CASE("cups and spoons are the shop's own") {
    CHECK(in_kitchen(250, Measures::metric) == "1 cup");
    CHECK(in_kitchen(20, Measures::australian) == "1 tbsp");
    CHECK(in_kitchen(20, Measures::metric) == "1 tbsp + 1 tsp");
    CHECK(in_kitchen(240, Measures::label) == "1 cup");
}

TEST_CASE("what no spoon is small enough for has no measure") {
    CHECK(in_kitchen(quantity("1/20 tsp").amount) == "nothing");
    CHECK(in_kitchen(quantity("1/16 tsp").amount) == "1/8 tsp");
}

TEST_CASE("a thing without a density has no measures") {
    CHECK(!kitchen_measures(std::vector<Density>(), Measures::us));
}

TEST_CASE("any amount: at most two terms, one where one does, and the error is what is missing") {
    Draw draw(5);
    for (Measures const measures : {Measures::us, Measures::label, Measures::metric,
                                    Measures::australian, Measures::imperial}) {
        KitchenMeasures const kitchen = kitchen_measures(measures);
        for (int i = 0; i < 400; ++i) {
            Number const amount = kitchen.tbsp + draw.number(0, 3000) / 3;
            auto const measure = nearest_measure(amount, kitchen);
            REQUIRE(measure);
            CHECK((measure->terms.size() == 1 || measure->terms.size() == 2));
            Number sum;
            for (MeasureTerm const& term : measure->terms) {
                CHECK(term.count.is_positive());
                sum += term.count * find_unit(term.word, measures)->factor;
            }
            CHECK(sum == measure->amount);
            CHECK(measure->amount - amount == measure->error * amount);
            // two measures never miss more than half the step of the last spoon: 1/8 tsp, or 1/4 tbsp where
            // a cup's rest goes by tablespoons
            Number const off = sum > amount ? sum - amount : amount - sum;
            bool const is_near = off <= kitchen.tbsp / 4 || off * 50 <= amount;
            CHECK_MESSAGE(is_near, exact(amount));
        }
    }
}
