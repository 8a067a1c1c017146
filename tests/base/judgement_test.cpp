#include <groat/base/diagnostic.hpp>
#include <groat/base/judgement.hpp>

#include <doctest/doctest.h>

using groat::Diagnostics;
using groat::Judgement;
using groat::Severity;
using groat::Span;

namespace {

/// One warning of each of two codes, and an error.
Diagnostics three_findings() {
    Diagnostics found;
    found.warn(Span{1, 1, 1, 1}, "stale-price", "butter's price is old");
    found.warn(Span{1, 2, 1, 1}, "from-whom", "from whom do you buy butter");
    found.error(Span{1, 3, 1, 1}, "missing-price", "sugar has no price");
    return found;
}

} // namespace

TEST_CASE("a warning that is accepted is counted, with its reason, and not kept") {
    Diagnostics found = three_findings();
    found.judge({{{"stale-price", "a new list comes in May"}}, {}});
    CHECK(found.warnings() == 1);
    CHECK(found.errors() == 1);
    REQUIRE(found.accepted().size() == 1);
    CHECK(found.accepted()[0].code == "stale-price");
    CHECK(found.accepted()[0].reason == "a new list comes in May");
    CHECK(found.accepted()[0].count == 1);
    // what is found later is judged as well, and the same one is counted once
    found.add(three_findings());
    found.warn(Span{1, 9, 1, 1}, "stale-price", "sugar's price is old");
    CHECK(found.accepted()[0].count == 2);
    CHECK(found.warnings() == 1);
}

TEST_CASE("a code that is accepted and not found is not told") {
    Diagnostics found = three_findings();
    found.judge({{{"loss-not-as-seen", "a new oven"}}, {}});
    CHECK(found.accepted().empty());
    CHECK(found.warnings() == 2);
}

TEST_CASE("an error is not accepted, whatever its code mostly is") {
    Diagnostics found;
    found.judge({{{"given-twice", "it is"}, {"missing-price", "we know"}}, {}});
    found.error(Span{1, 1, 1, 1}, "given-twice", "butter is given twice");
    found.error(Span{1, 2, 1, 1}, "missing-price", "butter has no price");
    CHECK(found.errors() == 2);
    CHECK(found.accepted().empty());
}

TEST_CASE("a warning that is held to be an error is one, and stands in the way where it is met") {
    Diagnostics found = three_findings();
    found.judge({{}, {"from-whom"}});
    CHECK(found.errors() == 2);
    CHECK(found.errors_met() == 2);
    CHECK(found.raised() == 1);
    CHECK(found.warnings() == 1);
    CHECK(found.sorted()[1].severity == Severity::error);
    found.warn(Span{1, 2, 1, 1}, "from-whom", "from whom do you buy butter");
    CHECK(found.errors() == 2);
    CHECK(found.errors_met() == 3);
}

TEST_CASE("what was accepted elsewhere is judged anew where it is handed on") {
    Diagnostics accepting = three_findings();
    accepting.judge({{{"stale-price", "known"}}, {}});
    Diagnostics plain;
    plain.add(accepting);
    CHECK(plain.warnings() == 2);
}

TEST_CASE("errors that were met before are not forgotten by judging") {
    Diagnostics found;
    for (int i = 0; i < 3; ++i) found.error(Span{1, 1, 1, 1}, "missing-price", "no price");
    found.judge({});
    CHECK(found.errors() == 1);
    CHECK(found.errors_met() == 3);
}
