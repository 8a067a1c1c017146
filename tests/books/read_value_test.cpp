#include "reading.hpp"

#include <groat/books/bind.hpp>
#include <groat/books/read_value.hpp>

#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <vector>

using groat::Fields;
using groat::KeyShape;
using groat::Reading;
using groat_test::Desk;

namespace {

enum class Cover { none, awning, hall };
struct Table {
    std::string name;
    groat::Quantity holds;
    groat::Span origin = {};
};
struct Place {
    std::optional<Cover> cover;
};
/// A market stall: a member for each kind of value.
struct Stall {
    std::string name;
    std::string sign;
    groat::Reference market;
    std::optional<groat::Date> since;
    groat::Days rest{0};
    int days = 0;
    bool is_open = false;
    bool has_late_hours = false;
    groat::Number helpers;
    groat::Number set_up;
    groat::Integer stools = 0;
    groat::Number flour;
    groat::Money rent;
    std::optional<groat::Money> coin;
    groat::MoneyRate wage;
    std::optional<groat::Share> commission;
    Place place;
    std::vector<std::string> notes;
    std::vector<groat::Density> densities;
    std::vector<Table> tables;
    std::vector<Table> baskets;
    std::string told_apart = "by its reader";
    groat::Span origin = {};
};

namespace shapes {

using namespace groat::shapes;

inline constexpr std::string_view covers[] = {"none", "awning", "hall"};
inline constexpr std::string_view hours[] = {"usual", "late"};
inline constexpr KeyShape table_keys[] = {
    {"name", may, to<&Table::name>(a_name), "front", "What it is called."},
    {"holds", must, to<&Table::holds>(an_amount), "12", "What fits on it."},
};
inline constexpr groat::Shape table{"table", "this table", table_keys};
inline constexpr groat::Value a_table = mapping(table);
inline constexpr KeyShape stall_keys[] = {
    {"stall", must, to<&Stall::name>(a_name), "by the well", "What it is called."},
    {"sign", may, to<&Stall::sign>(a_text), "Bread", "What stands on its sign."},
    {"market", may, to<&Stall::market>(a_name), "old harbour", "Where it is."},
    {"since", may, to<&Stall::since>(a_date), "2026-05-02", "Its first day."},
    {"rest", may, to<&Stall::rest>(some_days), "2 days", "How long it is closed."},
    {"days", may, to<&Stall::days>(some_days), "3", "How long a market lasts."},
    {"open", may, to<&Stall::is_open>(yes_or_no), "yes", "Whether it is open."},
    {"hours", may, to<&Stall::has_late_hours>(one_of(hours)), "late", "How long it is open."},
    {"helpers", may, to<&Stall::helpers>(a_number), "1 1/2", "How many help."},
    {"set up", may, to<&Stall::set_up>(a_time), "40 min", "How long it takes to set up."},
    {"stools", may, to<&Stall::stools>(a_count), "4", "How many can sit."},
    {"flour", may, to<&Stall::flour>(a_mass), "2 kg", "What is strewn on the boards."},
    {"rent", may, to<&Stall::rent>(some_money), "30.00", "What a day costs."},
    {"coin", may, to<&Stall::coin>(a_step_of_money), "0.05", "The least that is given back."},
    {"wage", may, to<&Stall::wage>(money_per_hour), "15.00 / h", "What an hour is paid."},
    {"commission", may, to<&Stall::commission>(a_percentage), "5 %", "What the market takes."},
    {"cover", may, to<&Stall::place, &Place::cover>(one_of(covers)), "hall", "What is above it."},
    {"notes", may, to<&Stall::notes>(texts), "[by the door]", "What else is to be known."},
    {"density", may, to<&Stall::densities>(list_of(a_density)), "125 g / cup", "What it weighs."},
    {"tables", may, to<&Stall::tables>(list_of(a_table)), "[{holds: 12}]", "Its tables."},
    {"baskets", may, to<&Stall::baskets>(names_to("baskets", a_table)), "{large: {holds: 9}}",
     "Its baskets."},
    {"told apart", may, a_text, "by hand", "What its reader asks for."},
};
inline constexpr groat::Shape stall{"stall", "this stall", stall_keys};

} // namespace shapes

struct Reader : Desk {
    Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Stall stall(std::string text) {
        Fields<shapes::stall> fields(node("stall: by the well\n" + std::move(text)), found);
        Stall stall;
        stall.origin = fields.origin("stall");
        fields.read_into(stall, reading);
        fields.close();
        return stall;
    }
};

/// What is said of a value under its key.
std::string said(std::string text) {
    Reader desk;
    (void)desk.stall(std::move(text));
    std::string const said = desk.said();
    return said.substr(0, said.find('\n'));
}

} // namespace

TEST_CASE("a key that is bound to a member is read into it, by the type of the member") {
    Reader desk;
    Stall const stall = desk.stall("sign: |\n  Bread\n  and more\n"
                                   "market: old harbour\n"
                                   "since: 2026-05-02\n"
                                   "rest: 2 days\n"
                                   "days: 3\n"
                                   "open: yes\n"
                                   "hours: late\n"
                                   "helpers: 1 1/2\n"
                                   "set up: 1 h\n"
                                   "stools: 2 dozen\n"
                                   "flour: 2 kg\n"
                                   "rent: 30.00\n"
                                   "coin: 0.05\n"
                                   "wage: 15.00 / h\n"
                                   "commission: 5 %\n"
                                   "cover: awning\n"
                                   "notes: by the door\n"
                                   "density: [125 g / cup, 8 g / tbsp]\n"
                                   "tables: [{holds: 12}, {name: back, holds: 3 kg}]\n"
                                   "baskets: {large: {holds: 9}}\n");
    CHECK(desk.said().empty());
    CHECK(stall.name == "by the well");
    CHECK(stall.origin.column == 8);
    CHECK(stall.sign == "Bread\nand more");
    CHECK(stall.market.name == "old harbour");
    CHECK(groat::iso_date(stall.since.value()) == "2026-05-02");
    CHECK(stall.rest.count() == 2);
    CHECK(stall.days == 3);
    CHECK(stall.is_open);
    CHECK(stall.has_late_hours);
    CHECK(exact(stall.helpers) == "3/2");
    CHECK(exact(stall.set_up) == "60");
    CHECK(stall.stools == 24);
    CHECK(exact(stall.flour) == "2000");
    CHECK(exact(stall.rent.amount()) == "30");
    CHECK(exact(stall.coin.value().amount()) == "1/20");
    CHECK(exact(stall.wage.of(groat::minutes(20)).amount()) == "5");
    CHECK(exact(stall.commission.value().value()) == "1/20");
    CHECK(stall.place.cover == Cover::awning);
    CHECK(stall.notes == std::vector<std::string>{"by the door"});
    CHECK(stall.densities.size() == 2);
    REQUIRE(stall.tables.size() == 2);
    CHECK(stall.tables[1].name == "back");
    CHECK(exact(stall.tables[1].holds.amount) == "3000");
    CHECK(stall.tables[0].origin.line == 22);
    REQUIRE(stall.baskets.size() == 1);
    CHECK(stall.baskets[0].name == "large");
    CHECK(stall.baskets[0].origin.column == 11);
}

TEST_CASE("what is not said, or cannot be read, leaves a member as it was") {
    Reader desk;
    Stall const stall = desk.stall("helpers: some\nopen: maybe\nsince: today\ntold apart: now\n");
    CHECK(stall.helpers.is_zero());
    CHECK_FALSE(stall.is_open);
    CHECK_FALSE(stall.since);
    CHECK_FALSE(stall.coin);
    CHECK(stall.tables.empty());
    CHECK(stall.told_apart == "by its reader");
    CHECK(desk.marked() == "2:10+1 bad-number 3:7+5 bad-yes-no 4:8+5 bad-date 5:1+10 unknown-key");
}

TEST_CASE("a value has to be what is declared of it, and is called by its key") {
    CHECK(said("helpers: 0") ==
          "x.yaml:2:10: error: 'helpers' must be above 0, not '0' [not-positive]");
    CHECK(said("set up: 0 min").empty());
    CHECK(said("stools: 1/2") ==
          "x.yaml:2:9: error: 'stools' must be a whole number, not '1/2' [not-whole]");
    CHECK(said("flour: 3 L") ==
          "x.yaml:2:8: error: 'flour' must be a mass, and '3 L' is a volume [wrong-dimension]");
    CHECK(said("rent: 0").empty());
    CHECK(said("rent: 0.001").empty());
    CHECK(said("coin: 0") == "x.yaml:2:7: error: 'coin' must be above 0, not '0' [not-positive]");
    CHECK(said("coin: 0.001").ends_with("[not-payable]"));
    CHECK(said("wage: 15.00 / kg").ends_with("[bad-rate]"));
    CHECK(said("cover: tent").ends_with("[unknown-word]"));
    CHECK(said("sign: ''").ends_with("[missing-value]"));
}

TEST_CASE("what is behind a name is called by that name") {
    CHECK(said("baskets: {large: {holds: 9}, small: {}}") ==
          "x.yaml:2:37: error: 'holds' is missing from this table [missing-key]");
    CHECK(said("baskets: [large]") ==
          "x.yaml:2:10: error: a mapping of baskets is expected here, not a list [wrong-kind]");
}

TEST_CASE("one bad value of a list does not hide the others") {
    Reader desk;
    Stall const stall = desk.stall("density: [200 g / cup, 0 g / tsp, 4.2 g / tsp]\n");
    CHECK(stall.densities.size() == 2);
    CHECK(desk.marked() == "2:24+9 bad-density");
}
