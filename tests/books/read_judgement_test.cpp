#include "reading.hpp"

#include <groat/books/read_shop.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Judgement;
using groat::Reading;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    Reading reading{found};

    /// What a shop with these lines, from line 3 on, says of findings.
    Judgement judgement(std::string const& text) {
        return read_shop(node("shop: Quillon Street\ncurrency: USD\n" + text + "\n"), reading)
            .judgement;
    }
};

std::string judgement_marks(std::string const& text) {
    Reader desk;
    (void)desk.judgement(text);
    return desk.marked();
}

} // namespace

TEST_CASE("warnings are accepted by their code, each with a reason") {
    Reader desk;
    Judgement const judgement =
        desk.judgement("accept: {loss-not-as-seen: new oven in January, from-whom: 'we know'}");
    CHECK(desk.said().empty());
    REQUIRE(judgement.accepted.size() == 2);
    CHECK(judgement.accepted[0].code == "loss-not-as-seen");
    CHECK(judgement.accepted[0].reason == "new oven in January");
    CHECK(judgement.accepts("from-whom"));
    CHECK_FALSE(judgement.accepts("stale-price"));
}

TEST_CASE("warnings are held to be errors by their code") {
    Reader desk;
    Judgement const judgement = desk.judgement("severity: {below-cost: error}");
    CHECK(desk.said().empty());
    CHECK(judgement.holds_as_error("below-cost"));
    CHECK_FALSE(judgement.holds_as_error("stale-price"));
}

TEST_CASE("what cannot be accepted is told at its key") {
    CHECK(judgement_marks("accept: {missing-price: a gift}") == "3:10+13 not-acceptable");
    CHECK(judgement_marks("accept: {stale-prise: known}") == "3:10+11 unknown-code");
    CHECK(judgement_marks("accept: {stale-price: ''}") == "3:23+2 missing-value");
    CHECK(judgement_marks("accept: [stale-price]") == "3:9+1 wrong-kind");
    CHECK(judgement_marks("severity: {stale-price: warning}") == "3:25+7 unknown-word");
    CHECK(judgement_marks("accept: {stale-price: known}\nseverity: {stale-price: error}") ==
          "4:12+11 given-twice");
}
