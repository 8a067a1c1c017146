#include <groat/cost/pace.hpp>

#include "books.hpp"
#include "random_book.hpp"

#include <groat/cost/engine.hpp>

using namespace groat;
using namespace groat::steps_detail;
using namespace groat::test;

TEST_CASE("what comes out even is not rounded up") {
    Pace const dozens{1, 0, 12};
    Pace const loads = rounded_up(times(dozens, number("1/6")), 1); // two of six for each dozen
    CHECK(loads.rate == number("1/6"));
    CHECK(loads.slack.is_zero());
    CHECK(loads.grain == 2);
    Pace const fives = rounded_up(times(dozens, number("1/5")), 1);
    CHECK(fives.slack == 1);
    CHECK(fives.grain == 1);
}

TEST_CASE("two amounts are multiples of their common grain") {
    CHECK(common_grain(12, 18) == 6);
    CHECK(common_grain(number("3/4"), number("1/6")) == number("1/12"));
}

TEST_CASE("in any order each quantity keeps its pace") {
    for_random_books(100, [](Book const& book) {
        Costing const costing(linked(book), today);
        Formulary const& formulary = costing.formulary();
        Explosion const explosion =
            explode(book, formulary, Losses::all, Wholes::all, groat::test::sales_of(book));
        for (FormulaRun const& run : explosion.runs) {
            Formula const& formula = book.formulas[run.formula];
            Pace const wanted{1, 0, run.demand};
            std::vector<Number> paid;
            std::vector<Pace> paces;
            add_paid(formula, making_of(run), paid);
            add_paid(formula, making_of(formula, formulary.with_losses[run.formula], wanted),
                     paces);
            REQUIRE(paid.size() == paces.size());
            for (std::size_t i = 0; i < paid.size(); ++i) {
                REQUIRE(paid[i] >= paces[i].rate * run.demand);
                REQUIRE(paid[i] <= paces[i].rate * run.demand + paces[i].slack);
                REQUIRE((paid[i].is_zero() || (paid[i] / paces[i].grain).is_whole()));
            }
        }
    });
}
