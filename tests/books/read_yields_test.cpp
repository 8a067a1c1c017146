#include "reading.hpp"

#include <groat/books/read_yields.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Number;
using groat::YieldSource;
using groat::YieldTest;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    YieldTest test(std::string const& text) { return read_yield_test(node(text), reading); }
};

/// What is found in a test of plums; what is added begins in line 4.
std::string test_marks(std::string const& text) {
    Reader desk;
    (void)desk.test("test: t\nitem: plum\ndate: 2026-11-12\n" + text + "\n");
    return desk.marked();
}

struct Cited {
    std::optional<groat::Yield> yield;
    YieldSource source;
    std::string marks;
};
Cited cited(std::string const& text) {
    Reader desk;
    Cited result;
    result.yield = read_yield(desk.value("yield: " + text + "\n"), result.source, desk.reading);
    result.marks = desk.marked();
    return result;
}

} // namespace

TEST_CASE("every field of a yield test arrives") {
    Reader desk;
    YieldTest const test = desk.test(R"(
test: plum 12 november
item: plum
date: 2026-11-12
as purchased: 10 kg
trim:
  stones: 0.9 kg
  bruised: {mass: 0.3 kg, worth: 1.20 / kg}
usable: 8.8 kg
price: 33.00
supplier: Fenwhistle Farm
)");
    CHECK(desk.said().empty());
    CHECK(test.name == "plum 12 november");
    CHECK(test.origin == groat::Span{1, 2, 7, 16});
    CHECK(test.item.name == "plum");
    CHECK(groat::iso_date(*test.date) == "2026-11-12");
    CHECK(test.as_purchased.amount == 10000);
    REQUIRE(test.trim.size() == 2);
    CHECK(test.trim[0].name == "stones");
    CHECK(test.trim[0].grams == 900);
    CHECK_FALSE(test.trim[0].worth);
    CHECK(test.trim[1].value().amount() == Number(9, 25)); // 0.3 kg at 1.20
    CHECK(*test.stated_usable == 8800);
    CHECK(test.price->amount() == 33);
    CHECK(test.supplier.name == "Fenwhistle Farm");
}

TEST_CASE("what is usable may follow from the trim, and a purchase be counted") {
    Reader desk;
    YieldTest const test = desk.test(
        "test: t\nitem: lemon\ndate: 2026-11-12\nas purchased: 12\ntrim: {peel: 24 oz}\n");
    CHECK(desk.said().empty());
    CHECK_FALSE(test.stated_usable);
    CHECK(test.as_purchased.is(groat::Dimension::count));
    CHECK_FALSE(test.price);
    CHECK_FALSE(test.supplier.is_given());
}

TEST_CASE("a yield test has a name, an item, a date, and two weights") {
    Reader desk;
    CHECK(desk.test("item: plum\ndate: 2026-11-12\nas purchased: 1 kg\nusable: 0.9 kg\n")
              .name.empty());
    CHECK(desk.marked() == "1:1+1 missing-key");
    Reader none;
    (void)none.test("test: t\n");
    CHECK(none.marked() ==
          "1:1+1 missing-key 1:1+1 missing-key 1:1+1 missing-key 1:1+1 missing-key");
    CHECK(test_marks("as purchased: 1 kg") == "1:1+1 missing-key");
    CHECK(test_marks("usable: 1 kg") == "1:1+1 missing-key");
    CHECK(test_marks("as purchased: 1 kg\nusable: 0.9 kg").empty());
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: 90 g}").empty());
}

TEST_CASE("what cannot be weighed is refused where it stands") {
    CHECK(test_marks("as purchased: 0 kg\nusable: 1 kg") == "4:15+4 not-positive");
    CHECK(test_marks("as purchased: 1 h\nusable: 1 kg") == "4:15+3 wrong-dimension");
    CHECK(test_marks("as purchased: lots\nusable: 1 kg") == "4:15+1 bad-quantity");
    CHECK(test_marks("as purchased: 1 kg\nusable: 0 g") == "5:9+3 not-positive");
    CHECK(test_marks("as purchased: 1 kg\nusable: 3") == "5:9+1 wrong-dimension");
    CHECK(test_marks("as purchased: 1 kg\nusable: 88 %") == "5:12+1 unknown-unit");
    CHECK(test_marks("as purchased: 1 kg\ntrim: 90 g") == "5:7+4 wrong-kind");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {}") == "5:7+1 missing-value");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: -1 g}") == "5:16+4 not-positive");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: 0 g}").empty());
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: 1 g, stones: 2 g}") ==
          "5:21+6 duplicate-key");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: {worth: 1 / kg}}") ==
          "5:16+1 missing-key");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: {mass: 1 g, worth: 1.20}}") ==
          "5:35+4 bad-rate");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: {mass: 1 g, worth: 1.20 / h}}") ==
          "5:42+1 bad-rate");
    CHECK(test_marks("as purchased: 1 kg\ntrim: {stones: {mass: 1 g, wroth: 1 / kg}}") ==
          "5:28+5 unknown-key");
    CHECK(test_marks("as purchased: 1 kg\nusable: 1 kg\nprice: -3") == "6:8+2 negative-money");
    CHECK(test_marks("as purchased: 1 kg\nuseable: 0.9 kg") == "5:1+7 unknown-key");
}

TEST_CASE("a yield is a percentage, or cites tests") {
    Cited const stated = cited("88 %");
    CHECK(stated.yield->value() == Number(22, 25));
    CHECK_FALSE(stated.source.is_cited());
    CHECK(stated.source.origin == groat::Span{1, 1, 8, 4});
    Cited const one = cited("{test: plum 12 november}");
    CHECK_FALSE(one.yield);
    CHECK(one.source.kind == YieldSource::Kind::one_test);
    CHECK(one.source.test.name == "plum 12 november");
    Cited const all = cited("tested");
    CHECK(all.source.kind == YieldSource::Kind::all_tests);
    CHECK((stated.marks + one.marks + all.marks).empty());
}

TEST_CASE("a yield that is neither is refused") {
    CHECK(cited("testd").marks == "1:8+5 unknown-word");
    CHECK(cited("0.88").marks == "1:8+4 bad-percent");
    CHECK(cited("0 %").marks == "1:8+3 rate-out-of-range");
    CHECK(cited("[88 %]").marks == "1:8+1 wrong-kind");
    CHECK(cited("{}").marks == "1:8+1 missing-key");
    CHECK(cited("{tset: plum}").marks == "1:9+4 unknown-key");
    CHECK(cited("{test: }").marks == "1:9+4 missing-value");
    CHECK_FALSE(cited("{}").source.is_cited());
}
