#include <groat/paper/measure_words.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

TEST_CASE("a measure that misses by more than two per cent says so") {
    // scoop chart "Basics at a Glance": No. 100 is 1.92 tsp, for which its 2 tsp are 4.17 % too much
    KitchenMeasures const kitchen = kitchen_measures(Measures::us);
    auto const words = [&](Number const& amount) {
        return measure_words(nearest_measure(amount, kitchen).value());
    };
    CHECK(words(scoop_volume(100).value()) == "2 tsp (4 % too much)");
    CHECK(words(quantity("2 1/4 cup").amount) == "2 1/4 cup");
    CHECK(words(quantity("0.16 tsp").amount) ==
          "1/8 tsp (22 % too little)"); // 0.125 / 0.16 = 0.78125
}

TEST_CASE("whole ones carry the exact number where it is another") {
    CHECK(whole_words(number("6.8")) == "7 (6.8)");
    CHECK(whole_words(number("20/3")) == "7 (6.67)");
    CHECK(whole_words(7) == "7");
}
