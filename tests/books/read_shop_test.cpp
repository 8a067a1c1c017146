#include "reading.hpp"

#include <groat/books/read_shop.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Number;
using groat::Reading;
using groat::Shop;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    Reading reading{found};

    Shop shop(std::string const& text) { return read_shop(node(text), reading); }
};

/// What is found in a shop that has a name and a currency, and from line 3 on this.
std::string shop_marks(std::string const& text) {
    Reader desk;
    (void)desk.shop("shop: Quillon Street\ncurrency: USD\n" + text + "\n");
    return desk.marked();
}

} // namespace

TEST_CASE("the least of a shop is its name and its currency, and the rest has sensible defaults") {
    Reader desk;
    Shop const shop = desk.shop("shop: Quillon Street Bakehouse\ncurrency: USD\n");
    CHECK(desk.said().empty());
    CHECK(shop.name == "Quillon Street Bakehouse");
    CHECK(shop.currency.code() == "USD");
    CHECK(desk.reading.currency == shop.currency);
    CHECK(shop.measures == groat::Measures::us);
    CHECK_FALSE(shop.is_variable[static_cast<std::size_t>(groat::Category::overhead)]);
    CHECK(shop.is_variable[static_cast<std::size_t>(groat::Category::labour)]);
}

TEST_CASE("every field of a shop arrives") {
    Reader desk;
    Shop const shop = desk.shop(R"(
shop: Quillon Street Bakehouse
address: [12 Quillon Street, Halden]
contact: by the door
currency: USD
measures: metric
labour: {baker: {wage: 21.00 / h, on-cost: 12 %}, helper: {wage: 0.25 / min}}
ovens: {deck: {power: 5.5 kW, duty: 45 %, preheat: 25 min, fuel: gas}, small: {power: 900 W}}
energy: {electricity: 0.18 / kWh, gas: 0.09 / kWh}
overhead:
  - {name: rent, rate: 6.40 per labour hour}
  - {name: tools, rate: 2 % of prime cost}
order work: [{task: invoice, by: baker, minutes: 15}]
delivery: {flat: 5.00, rate: 0.60 / km}
fees: {card: {share: 2.9 %, fixed: 0.30}, bank: {}}
paid by: card
tax: {name: sales tax, rate: 8 1/4 %, prices: with, rounded: per line, other rates: {reduced: 5 %}}
price: {margin: 40 %, to: 0.25}
minimum order: 40.00
rush: {within: 3 days, surcharge: 15 %}
deposit: 30 %
valid: 14 days
stale after: 60 days
cash rounding: 0.05
standard run: 60
household measures: yes
variable: [ingredients, energy]
terms: [Collect before noon., Keep boxes closed.]
)");
    CHECK(desk.said().empty());
    CHECK(shop.address.size() == 2);
    CHECK(shop.measures == groat::Measures::metric);
    REQUIRE(shop.roles.size() == 2);
    CHECK(shop.roles[0].on_cost.value() == Number(3, 25));
    CHECK(shop.roles[1].wage.of(groat::minutes(60)).amount() == 15); // 0.25 a minute
    REQUIRE(shop.ovens.size() == 2);
    CHECK(shop.ovens[0].power.amount == 5500);
    CHECK(shop.ovens[0].duty.value() == Number(9, 20));
    CHECK(shop.ovens[0].preheat == 25);
    CHECK(shop.ovens[0].fuel.name == "gas");
    CHECK(shop.ovens[1].duty.value() == 1);
    CHECK(shop.ovens[1].preheat == 0);
    CHECK(shop.ovens[1].fuel.name == "electricity");
    CHECK(shop.tariffs.size() == 2);
    REQUIRE(shop.overheads.size() == 2);
    CHECK(shop.overheads[0].driver == groat::Overhead::Driver::labour_hour);
    CHECK(shop.overheads[1].share.value() == Number(1, 50));
    CHECK(shop.order_work[0].per == groat::Per::order);
    CHECK(shop.delivery_flat.amount() == 5);
    CHECK(shop.delivery_rate.of({12000, groat::Dimension::distance, nullptr}).amount() ==
          Number(36, 5)); // 12 km
    CHECK(shop.fees[0].share.value() == Number(29, 1000));
    CHECK(shop.paid_by.name == "card");
    CHECK(shop.tax.is_contained);
    CHECK(shop.tax.is_rounded_per_line);
    CHECK(shop.tax.rate.value() == Number(33, 400));
    CHECK(shop.tax.other_rates[0].name == "reduced");
    CHECK(shop.price.target.has_value());
    CHECK(shop.minimum_order->amount() == 40);
    CHECK(shop.rush->within.count() == 3);
    CHECK(shop.deposit.value() == Number(3, 10));
    CHECK(shop.valid->count() == 14);
    CHECK(shop.stale_after->count() == 60);
    CHECK(shop.cash_rounding->amount() == Number(1, 20));
    CHECK(*shop.standard_run == 60);
    CHECK(shop.measures_by_cup);
    CHECK(shop.is_variable == std::array{true, false, false, false, true, false, false});
    CHECK(shop.terms.size() == 2);
}

TEST_CASE("a shop without a currency, or with one that does not exist, is told what to write") {
    Reader desk;
    (void)desk.shop("shop: Quillon Street\n");
    CHECK(desk.said() == "x.yaml:1:1: error: 'currency' is missing from the shop [missing-key]\n"
                         "  1 | shop: Quillon Street\n"
                         "    | ^\n"
                         "  help: add 'currency: USD'\n");
    Reader lower;
    (void)lower.shop("shop: Quillon Street\ncurrency: usd\n");
    CHECK(lower.said() == "x.yaml:2:11: error: 'usd' is not a currency [unknown-currency]\n"
                          "  2 | currency: usd\n"
                          "    |           ^^^\n"
                          "  help: did you mean 'USD'?\n");
    Reader unknown;
    (void)unknown.shop("shop: Quillon Street\ncurrency: ducats\nminimum order: 3 EUR\n");
    CHECK(unknown.marked() == "2:11+6 unknown-currency"); // and not a word about the euros
}

TEST_CASE("what makes no sense in a shop is refused where it stands") {
    CHECK(shop_marks("measures: cups") == "3:11+4 unknown-word");
    CHECK(shop_marks("labour: {baker: 21.00 / h}") == "3:17+9 wrong-kind");
    CHECK(shop_marks("labour: {baker: {wage: 21.00}}") == "3:24+5 bad-rate");
    CHECK(shop_marks("labour: {baker: {wage: 21.00 / km}}") == "3:32+2 bad-rate");
    CHECK(shop_marks("labour: {baker: {wage: 21.00 EUR / h}}") == "3:30+3 wrong-currency");
    CHECK(shop_marks("labour: {baker: {wage: -1 / h}}") == "3:24+6 negative-money");
    CHECK(shop_marks("labour: {baker: {wage: 1 / h, on_cost: 3 %}}") == "3:31+7 unknown-key");
    CHECK(shop_marks("labour: [baker]") == "3:9+1 wrong-kind");
    CHECK(shop_marks("ovens: {deck: {}}") == "3:15+1 missing-key");
    CHECK(shop_marks("ovens: {deck: {power: 5.5 kWh}}") == "3:23+7 wrong-dimension");
    CHECK(shop_marks("ovens: {deck: {power: 0 kW}}") == "3:23+4 not-positive");
    CHECK(shop_marks("ovens: {deck: {power: 5 kW, duty: 101 %}}") == "3:35+5 rate-out-of-range");
    CHECK(shop_marks("ovens: {deck: {power: 5 kW, preheat: 25}}") == "3:38+2 wrong-dimension");
    CHECK(shop_marks("energy: {electricity: 0.18 / kW}") == "3:30+2 bad-rate");
    CHECK(shop_marks("overhead: [{name: rent, rate: 6.40 per hour}]") == "3:40+4 bad-rate");
    CHECK(shop_marks("overhead: [{rate: 6.40 per order}]") == "3:12+1 missing-key");
    CHECK(shop_marks("order work: [{task: a, by: b, minutes: 3, per: batch}]") ==
          "3:48+5 unknown-word");
    CHECK(shop_marks("delivery: {flat: 5, rate: 0.60 / h}") == "3:34+1 bad-rate");
    CHECK(shop_marks("fees: {card: {share: 100 %}}") == "3:22+5 rate-out-of-range");
    CHECK(shop_marks("fees: {none: {}}") == "3:8+4 bad-name");
    CHECK(shop_marks("tax: {prices: with}") == "3:6+1 missing-key");
    CHECK(shop_marks("tax: {rate: 8 %, prices: gross}") == "3:26+5 unknown-word");
    CHECK(shop_marks("tax: {rate: 101 %}") == "3:13+5 rate-out-of-range");
    CHECK(shop_marks("tax: {rate: 8 %, other rates: {low: 5}}") == "3:37+1 bad-percent");
    CHECK(shop_marks("minimum order: -1") == "3:16+2 negative-money");
    CHECK(shop_marks("rush: {within: 3 days}") == "3:7+1 missing-key");
    CHECK(shop_marks("rush: {within: soon, surcharge: 10}") ==
          "3:16+4 bad-days 3:33+2 bad-percent");
    CHECK(shop_marks("deposit: 110 %") == "3:10+5 rate-out-of-range");
    CHECK(shop_marks("valid: 2 weeks") == "3:8+7 bad-days");
    CHECK(shop_marks("cash rounding: 0.001") == "3:16+5 not-payable");
    CHECK(shop_marks("standard run: 0") == "3:15+1 not-positive");
    CHECK(shop_marks("household measures: cups") == "3:21+4 bad-yes-no");
    CHECK(shop_marks("variable: [ingredients, rent]") == "3:25+4 unknown-word");
    CHECK(shop_marks("terms: {a: b}") == "3:8+1 wrong-kind");
    CHECK(shop_marks("currancy: EUR") == "3:1+8 unknown-key");
    CHECK(shop_marks("notes:") == "3:1+5 unknown-key");
    CHECK(shop_marks("contact:") == "3:1+7 missing-value");
}

TEST_CASE("one line of overhead may be variable, a drive has a driver, and delivery a tax") {
    Reader desk;
    groat::Shop const shop = desk.shop(
        "shop: a\ncurrency: USD\noverhead:\n  - {name: till roll, rate: 0.05 per piece, variable: "
        "yes}\n  - {name: rent, rate: 6.40 per labour hour}\ndelivery: {flat: 4.00, driver: "
        "assistant}\ntax: {rate: 8 %, delivery: with the goods}\nminimum order: 30.00\n");
    CHECK(desk.said().empty());
    CHECK(shop.overheads[0].is_variable == true);
    CHECK_FALSE(shop.overheads[1].is_variable.has_value());
    CHECK(shop.driver.name == "assistant");
    CHECK(shop.tax.delivery.name == "with the goods");
    CHECK(shop.minimum_order_origin.is_known());
    CHECK(shop_marks("overhead: [{name: a, rate: 1 per order, variable: often}]") ==
          "3:51+5 bad-yes-no");
    CHECK(shop_marks("tax: {rate: 8 %, other rates: {main: 5 %}}") == "3:32+4 bad-name");
    CHECK(shop_marks("price: {prime cost: 0 %}") == "3:21+3 rate-out-of-range");
    CHECK(shop_marks("price: {prime cost: 60 %, margin: 5 %}") == "3:27+6 not-both");
}

TEST_CASE("a shop with eleven errors brings all eleven") {
    Reader desk;
    (void)desk.shop(
        "shpo: a\ncurrency: USDD\nlabour: {b: {wage: 1}}\nenergy: {e: 1}\ndeposit: 3\nvalid: x\n"
        "tax: {rate: 3}\nfees: {c: {share: 3}}\nprice: {margin: 100 %}\nrush: {}\n");
    CHECK(desk.found.errors() == 11); // one each, and 'rush' lacks two
}

TEST_CASE("a list in place of a shop is one error") {
    Reader desk;
    (void)desk.shop("- shop: a\n");
    CHECK(desk.marked() == "1:1+1 wrong-kind");
}
