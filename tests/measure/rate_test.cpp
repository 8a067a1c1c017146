#include "../base/figures.hpp"

#include <groat/base/rounding.hpp>
#include <groat/measure/rate.hpp>

#include <string>
#include <string_view>

using groat::FeeRate;
using groat::FoodCostShare;
using groat::Loss;
using groat::Margin;
using groat::Markup;
using groat::Number;
using groat::parse_percent;
using groat::Share;
using groat::Surcharge;
using groat::TaxRate;
using groat::to_margin;
using groat::to_markup;
using groat::to_yield;
using groat::Yield;

namespace {

Number percent(std::string_view text) { return parse_percent(text).value(); }

template <class Rate> std::string said_of(std::string_view value) {
    auto const rate = Rate::of(percent(value));
    return rate ? "nothing" : rate.error().what;
}

} // namespace

TEST_CASE("a margin and its markup are the same profit seen from price and from cost") {
    // m = g / (1 - g) and g = m / (1 + m), worked in fractions
    struct Row {
        std::string_view margin, markup;
    };
    constexpr Row rows[] = {
        {"0 %", "0 %"},       {"10 %", "11 1/9 %"}, {"16 2/3 %", "20 %"}, {"20 %", "25 %"},
        {"25 %", "33 1/3 %"}, {"30 %", "42 6/7 %"}, {"33 1/3 %", "50 %"}, {"37.5 %", "60 %"},
        {"40 %", "66 2/3 %"}, {"50 %", "100 %"},    {"60 %", "150 %"},    {"66 2/3 %", "200 %"},
        {"75 %", "300 %"},    {"80 %", "400 %"},
    };
    for (Row const& row : rows) {
        CAPTURE(row.margin);
        Margin const margin = *Margin::of(percent(row.margin));
        Markup const markup = *Markup::of(percent(row.markup));
        CHECK(to_markup(margin).value() == markup.value());
        CHECK(to_margin(markup).value() == margin.value());
    }
}

TEST_CASE("the markups of a textbook, seen as margins") {
    // OpenStax Contemporary Mathematics m00058: cost 5.20, retail 9.90: a markup of 90.38 %
    Markup const shirt = *Markup::of((figure("9.90") - figure("5.20")) / figure("5.20"));
    CHECK(groat::decimal(shirt.value() * 100, 2) == "90.38");
    CHECK(groat::decimal(shirt.value() * 100, 4) == "90.3846");
    CHECK(groat::decimal(to_margin(shirt).value() * 100, 4) == "47.4747"); // 4.70 / 9.90
    CHECK(to_margin(shirt).value() == figure("4.70") / figure("9.90"));
    // cost 480, retail 840: a markup of 75 %
    Markup const desk = *Markup::of((Number(840) - 480) / 480);
    CHECK(desk.value() == percent("75 %"));
    CHECK(to_margin(desk).value() == Number(3) / 7); // 42.857142 %
}

TEST_CASE("going from margin to markup and back changes nothing") {
    Draw draw(13);
    for (int i = 0; i < 1'000; ++i) {
        Margin const margin = *Margin::of(Number(draw.whole(0, 998)) / 999);
        CHECK(to_margin(to_markup(margin)) == margin);
        Markup const markup = *Markup::of(draw.number(0, 20));
        CHECK(to_markup(to_margin(markup)) == markup);
        // both lead to the same price
        CHECK(1 / margin.rest() == 1 + to_markup(margin).value());
    }
}

TEST_CASE("what is lost is what is not left") {
    // 12 % bake loss: 400 g baked need 400 / 0.88 = 454.545 g of dough, not 448
    Loss const baking = *Loss::of(percent("12 %"));
    CHECK(to_yield(baking).value() == figure("0.88"));
    CHECK(400 / to_yield(baking).value() == Number(5000) / 11);
    // openwa.pressbooks.pub/bakeryandbusinessmath, ch. 25: 3 lb at 95 %, 5000 g at 87 %, 32 oz at 78 %
    CHECK(3 * Yield::of(percent("95 %"))->value() == figure("2.85"));
    CHECK(5000 * Yield::of(percent("87 %"))->value() == 4350);
    CHECK(groat::decimal(32 / Yield::of(percent("78 %"))->value(), 2) == "41.03");
    // BC Cook Articulation Committee, chapter 346: 1 kg of carrots leaves 800 g, so costs 1.25 times
    CHECK(1 / Yield::of(Number(800) / 1000)->value() == figure("1.25"));
}

TEST_CASE("each rate admits what makes sense for it and says what does not") {
    CHECK(said_of<Yield>("100 %") == "nothing");
    CHECK(said_of<Yield>("250 %") == "nothing"); // rice swells
    CHECK(said_of<Yield>("0 %") == "a yield of 0 % leaves nothing to use");
    CHECK(said_of<Loss>("0 %") == "nothing");
    CHECK(said_of<Loss>("100 %") ==
          "a loss of 100 % cannot be: a loss is at least 0 % and below 100 %");
    CHECK(said_of<Loss>("-3 %") ==
          "a loss of -3 % cannot be: a loss is at least 0 % and below 100 %");
    CHECK(said_of<Margin>("99.9 %") == "nothing");
    CHECK(
        said_of<Margin>("100 %") ==
        "a margin of 100 % is out of reach at any price: a margin is at least 0 % and below 100 %");
    CHECK(said_of<Margin>("-1 %") != "nothing");
    CHECK(said_of<Markup>("400 %") == "nothing");
    CHECK(said_of<Markup>("-5 %") == "a markup of -5 % would sell below cost");
    CHECK(said_of<FoodCostShare>("100 %") == "nothing");
    CHECK(said_of<FoodCostShare>("0 %") != "nothing");
    CHECK(said_of<FoodCostShare>("101 %") != "nothing");
    CHECK(said_of<TaxRate>("0 %") == "nothing");
    CHECK(said_of<TaxRate>("8.25 %") == "nothing");
    CHECK(said_of<TaxRate>("825 %") ==
          "a tax rate of 825 % cannot be: a tax rate is at least 0 % and at most 100 %");
    CHECK(said_of<FeeRate>("2.9 %") == "nothing");
    CHECK(said_of<FeeRate>("100 %") != "nothing");
    CHECK(said_of<Share>("100 %") == "nothing");
    CHECK(said_of<Share>("100.5 %") != "nothing");
    CHECK(said_of<Surcharge>("150 %") == "nothing");
    CHECK(said_of<Surcharge>("-1 %") == "a rate of -1 % cannot be negative");
}

TEST_CASE("a margin above 99 % points to the markup that was meant") {
    auto const margin = Margin::of(percent("100 %"));
    REQUIRE(!margin);
    CHECK(margin.error().code == "rate-out-of-range");
    CHECK(
        margin.error().help ==
        "a margin is a share of the price; for a share of the cost write a markup, such as 'markup: 100 %'");
}

TEST_CASE("who says nothing loses nothing, adds nothing and uses all of it") {
    CHECK(Yield().value() == 1);
    CHECK(Loss().value() == 0);
    CHECK(Margin().value() == 0);
    CHECK(Markup().value() == 0);
    CHECK(TaxRate().value() == 0);
    CHECK(FoodCostShare().value() == 1);
    CHECK(to_yield(Loss()) == Yield());
}

TEST_CASE("rates of one kind compare") {
    CHECK(*TaxRate::of(percent("7 %")) < *TaxRate::of(percent("19 %")));
    CHECK(*TaxRate::of(percent("7 %")) == *TaxRate::of(figure("0.07")));
    CHECK(TaxRate::of(percent("7 %"))->rest() == figure("0.93"));
}

TEST_CASE("a percentage is written with its sign") {
    CHECK(percent("2.9 %") == figure("0.029"));
    CHECK(percent("40%") == figure("0.4"));
    CHECK(percent("33 1/3 %") == Number(1) / 3);
    CHECK(percent(" 12½ % ") == figure("0.125"));
    CHECK(percent("-3 %") == figure("-0.03"));
    auto const bare = parse_percent("40");
    REQUIRE(!bare);
    CHECK(bare.error().code == "bad-percent");
    CHECK(bare.error().what == "'40' is not a percentage");
    CHECK(bare.error().help == "write it with its sign, as 12.5 %");
    for (std::string_view const text :
         {"", "%", " % ", "40 %%", "% 40", "40 percent", "2,9 %", "1e2 %", "0.4"}) {
        CAPTURE(text);
        CHECK(!parse_percent(text));
    }
}
