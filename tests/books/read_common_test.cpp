#include "reading.hpp"

#include <groat/books/read_common.hpp>
#include <groat/books/read_formulas.hpp>

#include <doctest/doctest.h>

#include <string>
#include <variant>
#include <vector>

using groat::Number;
using groat::Per;
using groat::PricePolicy;
using groat::Reading;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    PricePolicy price(std::string const& text) {
        return read_price_policy(value("price: " + text), reading);
    }
    std::vector<groat::Consumption> packing(std::string const& text) {
        groat::Fields<groat::shapes::sale_unit> fields(node("packing: " + text), found);
        groat::SaleUnit unit;
        fields.read_into(unit, reading);
        return unit.packing;
    }
};

std::string price_marks(std::string const& text) {
    Reader desk;
    (void)desk.price(text);
    return desk.marked();
}

std::string task_marks(std::string const& text, groat::Countable countable = {}) {
    Reader desk;
    (void)read_tasks<groat::shapes::formula_task>(desk.value("labour: " + text), countable,
                                                  desk.reading);
    return desk.marked();
}

} // namespace

TEST_CASE("a price has one target, and may have a point it lands on") {
    Reader desk;
    PricePolicy const margin = desk.price("{margin: 40 %, to: 0.25, toward: nearest}");
    REQUIRE(margin.target);
    CHECK(std::get<groat::Margin>(*margin.target).value() == Number(2, 5));
    REQUIRE(margin.point);
    CHECK(margin.point->step->amount() == Number(1, 4));
    CHECK(margin.point->to_nearest);
    CHECK(std::holds_alternative<groat::Markup>(*desk.price("{markup: 250 %}").target));
    CHECK(std::holds_alternative<groat::FoodCostShare>(*desk.price("{food cost: 30 %}").target));
    CHECK(std::get<groat::Contribution>(*desk.price("{contribution: 6}").target).amount.amount() ==
          6);
    CHECK(std::get<groat::GivenPrice>(*desk.price("{given: 24.50}").target).amount.amount() ==
          Number(49, 2));
    CHECK(std::get<groat::GivenPrice>(*desk.price("24.50").target).amount.amount() ==
          Number(49, 2));
    CHECK_FALSE(desk.price("{to: 0.50}").target);
    CHECK_FALSE(desk.price("{margin: 40 %}").point);
    CHECK(desk.price("{endings: [.50, .99]}").point->endings.size() == 2);
    CHECK(desk.price("{endings: .95}").point->endings.size() == 1);
    CHECK(desk.said().empty());
}

TEST_CASE("a price with two targets says which two") {
    Reader desk;
    (void)desk.price("{margin: 40 %, markup: 60 %}");
    CHECK(desk.said() == "x.yaml:1:23: error: 'margin' and 'markup' cannot both stand [not-both]\n"
                         "  1 | price: {margin: 40 %, markup: 60 %}\n"
                         "    |                       ^^^^^^\n"
                         "  note: 'margin' is here (x.yaml:1:9)\n"
                         "  help: keep one of the targets\n");
}

TEST_CASE("targets out of reach and prices nobody can pay are refused") {
    CHECK(price_marks("{margin: 100 %}") == "1:17+5 rate-out-of-range");
    CHECK(price_marks("{margin: 40}") == "1:17+2 bad-percent");
    CHECK(price_marks("{food cost: 0 %}") == "1:20+3 rate-out-of-range");
    CHECK(price_marks("{given: 24.505}") == "1:16+6 not-payable");
    CHECK(price_marks("{given: -1}") == "1:16+2 negative-money");
    CHECK(price_marks("{to: 0}") == "1:13+1 not-positive");
    CHECK(price_marks("{to: 0.001}") == "1:13+5 not-payable");
    CHECK(price_marks("{to: 0.25, toward: down}") == "1:27+4 unknown-word");
    CHECK(price_marks("{endings: [.50, 1.50, -.10, .999]}") ==
          "1:24+4 bad-ending 1:30+4 bad-ending 1:36+4 not-payable");
    CHECK(price_marks("{endings: []}") == "1:18+1 wrong-kind");
    CHECK(price_marks("{to: 0.25, endings: [.50]}") == "1:19+7 not-both");
    CHECK(price_marks("{endings: [.50], toward: nearest}") == "1:25+6 two-price-points");
    CHECK(price_marks("{}") == "1:8+1 missing-value");
    CHECK(price_marks("12.50").empty()); // a given price
    CHECK(price_marks("12.505") == "1:8+6 not-payable");
    CHECK(price_marks("40 %") == "1:8+4 wrong-kind"); // of what?
    CHECK(price_marks("{margins: 40 %}") == "1:9+7 unknown-key");
}

TEST_CASE("a task is somebody's minutes, counted by something") {
    Reader desk;
    auto const tasks = read_tasks<groat::shapes::formula_task>(
        desk.value("labour: [{task: mix, by: baker, minutes: 14}, {task: scoop, by: helper, "
                   "minutes: 1/4, per: piece}, {task: rest, minutes: 60, unattended: yes}]"),
        {}, desk.reading);
    CHECK(desk.said().empty());
    REQUIRE(tasks.size() == 3);
    CHECK(tasks[0].role.name == "baker");
    CHECK(tasks[0].per == Per::batch);
    CHECK(tasks[1].minutes == Number(1, 4));
    CHECK(tasks[1].per == Per::piece);
    CHECK(tasks[2].is_unattended);
    CHECK_FALSE(tasks[2].role.is_given());
}

TEST_CASE("a task that is not complete, or not possible, is refused") {
    CHECK(task_marks("[{task: mix, minutes: 14}]") == "1:10+1 missing-key"); // who does it?
    CHECK(task_marks("[{task: mix, by: baker}]") == "1:10+1 missing-key");
    CHECK(task_marks("[{by: baker, minutes: 0}]") == "1:10+1 missing-key");
    CHECK(task_marks("[{task: mix, by: baker, minutes: -1}]") == "1:42+2 negative");
    CHECK(task_marks("[{task: mix, by: baker, minutes: 14 min}]").ends_with("bad-number"));
    CHECK(task_marks("[{task: mix, by: baker, minutes: 1, per: sale unit}]") ==
          "1:50+9 unknown-word");
    CHECK(task_marks("[{task: mix, by: baker, minutes: 1, unattended: true}]") ==
          "1:57+4 bad-yes-no");
    CHECK(task_marks("[{task: mix, by: baker, minuts: 1}]") == "1:33+6 unknown-key");
    CHECK(task_marks("{task: mix, by: baker, minutes: 1}").empty()); // one for a list of one
    CHECK(task_marks("mix") == "1:9+3 wrong-kind");
}

TEST_CASE("work by the load needs an oven, and work by the piece needs pieces") {
    std::string const load = "[{task: bake, by: baker, minutes: 4, per: load}]";
    CHECK(task_marks(load).empty());
    CHECK(task_marks(load, {false, true}) == "1:51+4 load-without-oven");
    std::string const piece = "[{task: fill, by: baker, minutes: 4, per: piece}]";
    CHECK(task_marks(piece).empty());
    CHECK(task_marks(piece, {true, false}) == "1:51+5 made-by-mass");
}

TEST_CASE("supplies are used up in counts above 0") {
    Reader desk;
    auto const uses = read_consumables(
        desk.value("consumables: [{item: liner, amount: 1/3, per: load}, {item: bag, amount: 2}]"),
        {}, desk.reading);
    REQUIRE(uses.size() == 2);
    CHECK(uses[0].amount == Number(1, 3));
    CHECK(uses[0].per == Per::load);
    CHECK(uses[1].per == Per::batch);
    auto const packing = desk.packing("{window box: 1, liner: 1 dozen}");
    REQUIRE(packing.size() == 2);
    CHECK(packing[1].supply.name == "liner");
    CHECK(packing[1].amount == 12);
    CHECK(packing[1].per == Per::sale_unit);
    CHECK(desk.said().empty());
    (void)desk.packing("{box: 0, liner: -1, bag: 3 g}");
    (void)read_consumables(
        desk.value("consumables: [{item: bag, amount: 1, per: mix}, {amount: 1}]"), {},
        desk.reading);
    CHECK(desk.marked() == "1:16+1 not-positive 1:26+2 not-positive 1:35+3 wrong-dimension "
                           "1:43+3 unknown-word 1:49+1 missing-key");
}
