#include "books.hpp"

#include <groat/price/fee.hpp>

using namespace groat;
using namespace groat::test;

TEST_CASE("a card company keeps its share of all that is paid, and a fixed amount") {
    // 35.78 x 2.9 % + 0.30 = 1.33762, printed 1.34; the algebra is OpenStax Managerial Accounting m68116's
    FeeTerms const card{share_of<FeeRate>("2.9 %"), money("0.30")};
    CHECK(fee_on(money("35.78"), card) == money("1.33762"));
    CHECK(printed(fee_on(money("35.78"), card)) == "1.34");
}

TEST_CASE("nothing paid, nothing kept") {
    CHECK(fee_on(money("0"), {share_of<FeeRate>("2.9 %"), money("0.30")}).is_zero());
    CHECK(fee_on(money("50.00"), {}).is_zero());
}
