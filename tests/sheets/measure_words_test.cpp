#include <groat/sheets/measure_words.hpp>

#include "books.hpp"

using namespace groat;
using namespace groat::test;

TEST_CASE("a measure that misses by more than two per cent says so") {
    // 0.125 / 0.16 = 0.78125; 0.2 tsp has 1/4 tsp as its nearest, which is a quarter more
    KitchenMeasures const kitchen = kitchen_measures(Measures::us);
    auto const words = [&](Number const& amount) {
        return measure_words(nearest_measure(amount, kitchen).value());
    };
    CHECK(words(quantity("0.2 tsp").amount) == "1/4 tsp (25 % too much)");
    CHECK(words(quantity("2 3/4 cup").amount) == "2 3/4 cup");
    CHECK(words(quantity("0.16 tsp").amount) == "1/8 tsp (21.9 % too little)");
}

TEST_CASE("whole ones carry the exact number where it is another") {
    CHECK(whole_words(number("6.8")) == "7 (6.8)");
    CHECK(whole_words(number("20/3")) == "7 (6.67)");
    CHECK(whole_words(7) == "7");
    CHECK(whole_words(number("0.004")) == "1 (under 0.01)");
}
