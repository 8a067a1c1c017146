#include <groat/base/sum.hpp>

#include "figures.hpp"

#include <vector>

using groat::Number;

namespace {

Number summed(std::vector<Number> const& terms) {
    return groat::sum_in_pairs(std::span<Number const>(terms),
                               [](Number const& term) { return term; });
}

} // namespace

TEST_CASE("a sum in pairs is the sum") {
    CHECK(summed({}) == 0);
    CHECK(summed({figure("1/3")}) == figure("1/3"));
    // 1/2 + 1/3 + 1/6 = 1
    CHECK(summed({figure("1/2"), figure("1/3"), figure("1/6")}) == 1);
    Draw draw(3);
    for (std::size_t count = 0; count < 70; ++count) {
        std::vector<Number> terms;
        Number one_by_one;
        for (std::size_t i = 0; i < count; ++i) {
            terms.push_back(draw.number(-50, 50));
            one_by_one += terms.back();
        }
        CHECK(summed(terms) == one_by_one);
    }
}
