#include "books.hpp"

#include <groat/plan/shortfall.hpp>

using namespace groat;
using namespace groat::test;

TEST_CASE("a pack may fall short as the directive's table says") {
    // Directive 76/211/EEC, Annex I, 2.4: 5-50 g 9 %, 50-100 g 4.5 g, 100-200 g 4.5 %, 200-300 g 9 g,
    // 300-500 g 3 %, 500-1000 g 15 g, 1-10 kg 1.5 %, rounded up to a tenth of a gram
    for (auto const& [grams, shortfall] :
         {std::pair("5", "0.5"), std::pair("40", "3.6"), std::pair("75", "4.5"),
          std::pair("144", "6.5"), std::pair("250", "9"), std::pair("453", "13.6"),
          std::pair("750", "15"), std::pair("1500", "22.5"), std::pair("10000", "150")})
        CHECK(*tolerable_shortfall(number(grams)) == number(shortfall));
    CHECK(!tolerable_shortfall(number("4.9")));
    CHECK(!tolerable_shortfall(10'001));
}

TEST_CASE("a heavier pack never may fall short by less") {
    Number last;
    for (int grams = 5; grams <= 10'000; ++grams) {
        Number const now = *tolerable_shortfall(grams);
        CHECK(now >= last);
        last = now;
    }
}
