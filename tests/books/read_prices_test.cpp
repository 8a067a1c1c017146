#include "reading.hpp"

#include <groat/books/read_prices.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Number;
using groat::PriceList;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    PriceList list(std::string const& text) { return read_price_list(node(text), reading); }
};

std::string list_marks(std::string const& text) {
    Reader desk;
    (void)desk.list(text);
    return desk.marked();
}

/// What is found in an offer of `item: a` and this; what is added begins in column 20 of line 2.
std::string offer_marks(std::string const& text) {
    return list_marks("supplier: s\noffers: [{item: a, " + text + "}]\n");
}

} // namespace

TEST_CASE("an offer takes from its list what it does not say itself") {
    Reader desk;
    PriceList const list = desk.list(R"(
supplier: Mill Road Provisions
currency: USD
tax included: 7 %
from: 2026-10-01
terms: {minimum: 75.00, delivery: 9.50}
offers:
  - {item: plain flour, pack: 25 lb, price: 13.80}
  - {item: butter, pack: 36 x 1 lb, price: 141, from: 2026-11-03, until: 2026-12-31, code: F-25, freight: 1.10,
     deposit: 0.50, yield: 98 %, breaks: {10 packs: 136, 3 packs: 138.50}}
)");
    CHECK(desk.said().empty());
    CHECK(list.supplier.name == "Mill Road Provisions");
    CHECK(list.terms.minimum_order->amount() == 75);
    REQUIRE(list.offers.size() == 2);
    CHECK(list.offers[0].tax_included.value() == Number(7, 100));
    CHECK(groat::iso_date(*list.offers[0].from) == "2026-10-01");
    CHECK(list.offers[0].pack.amount == 25 * Number(45359237, 100000));
    CHECK(list.offers[1].pack_text == "36 x 1 lb");
    CHECK(groat::iso_date(*list.offers[1].from) == "2026-11-03");
    CHECK(list.offers[1].yield->value() == Number(49, 50));
    CHECK(list.offers[1].code == "F-25");
    // (141 + 1.10 + 0.50) / 1.07
    CHECK(list.offers[1].pack_outlay().amount() == Number(1426, 10) / Number(107, 100));
    REQUIRE(list.offers[1].breaks.size() == 2);
    CHECK(list.offers[1].breaks[0].packs == 3); // by number, however they were written
}

TEST_CASE(
    "terms say what a delivery costs, over which order it is shared, and whether one buys there") {
    Reader desk;
    PriceList const list = desk.list(
        "supplier: s\nterms: {delivery: 7.50, usual order: 120.00, free delivery from: 150, only "
        "compared: yes}\noffers:\n  - {item: a, pack: 1 lb, price: 1, only compared: yes}\n  - {item: "
        "b, pack: 1 lb, price: 1}\n");
    CHECK(desk.said().empty());
    CHECK(list.terms.share_of_usual_order() == Number(1, 16));
    CHECK(list.terms.free_delivery_from->amount() == 150);
    CHECK(list.terms.is_only_compared);
    CHECK(list.offers[0].is_only_compared);
    CHECK_FALSE(list.offers[1].is_only_compared);
}

TEST_CASE("a usual order is above nothing, and not below the least that is taken") {
    CHECK(list_marks("supplier: s\noffers: []\nterms: {usual order: 0}\n") ==
          "3:9+11 not-positive");
    CHECK(list_marks("supplier: s\noffers: []\nterms: {minimum: 75, usual order: 74.99}\n") ==
          "3:22+11 usual-below-minimum");
    CHECK(list_marks("supplier: s\noffers: []\nterms: {minimum: 75, usual order: 75}\n").empty());
    CHECK(list_marks("supplier: s\noffers: []\nterms: {usual ordr: 75}\n") == "3:9+10 unknown-key");
}

TEST_CASE("what costs nothing is fine, and what costs less is not") {
    CHECK(offer_marks("pack: 1 lb, price: 0").empty());
    CHECK(offer_marks("pack: 1 lb, price: -1") == "2:39+2 negative-money");
}

TEST_CASE("an offer needs an item, a pack and a price") {
    CHECK(list_marks("supplier: s\noffers: [{}]\n") ==
          "2:10+1 missing-key 2:10+1 missing-key 2:10+1 missing-key");
    CHECK(list_marks("supplier: s\n") == "1:1+1 missing-key");
    CHECK(list_marks("offers: []\n") == "1:1+1 missing-key");
    Reader desk;
    CHECK(desk.list("supplier: s\noffers: [{pack: 1 lb, price: 2}]\n").offers.empty());
}

TEST_CASE("packs, dates and breaks that cannot be are refused") {
    CHECK(offer_marks("pack: 0 lb, price: 1") == "2:26+4 not-positive");
    CHECK(offer_marks("pack: -1 lb, price: 1") == "2:26+5 not-positive");
    CHECK(offer_marks("pack: 3 h, price: 1") == "2:26+3 wrong-dimension");
    CHECK(offer_marks("pack: 25 lbz, price: 1") == "2:29+3 unknown-unit");
    CHECK(offer_marks("pack: [25 lb], price: 1") == "2:26+1 wrong-kind");
    CHECK(offer_marks("pack: 1 lb, price: 13.80 EUR") == "2:45+3 wrong-currency");
    CHECK(offer_marks("pack: 1 lb, price: 1, from: 11/03/2026") == "2:48+10 bad-date");
    CHECK(offer_marks("pack: 1 lb, price: 1, from: 2026-02-30") == "2:48+10 bad-date");
    CHECK(offer_marks("pack: 1 lb, price: 1, yield: 0 %") == "2:49+3 rate-out-of-range");
    CHECK(offer_marks("pack: 1 lb, price: 1, breaks: {many: 1}") == "2:51+4 bad-break");
    CHECK(offer_marks("pack: 1 lb, price: 1, breaks: {2.5 packs: 1}") == "2:51+9 bad-break");
    CHECK(offer_marks("pack: 1 lb, price: 1, breaks: [1]") == "2:50+1 wrong-kind");
    CHECK(offer_marks("pack: 1 lb, prise: 1") == "2:32+5 unknown-key");
    CHECK(list_marks("supplier: s\ntax included: 7\noffers: []\n") == "2:15+1 bad-percent");
    CHECK(list_marks("supplier: s\nterms: {minimum: 1, max: 2}\noffers: []\n") ==
          "2:21+3 unknown-key");
}

TEST_CASE("a list in another currency is one error, not one for each price") {
    Reader desk;
    (void)desk.list("supplier: s\ncurrency: EUR\noffers: [{item: a, pack: 1, price: 2}]\n");
    CHECK(
        desk.said() ==
        "x.yaml:2:11: error: this list is in EUR, but the books are kept in USD [wrong-currency]\n"
        "  2 | currency: EUR\n"
        "    |           ^^^\n"
        "  help: write what the prices are in USD\n");
    CHECK(list_marks("supplier: s\ncurrency: gold\noffers: []\n") == "2:11+4 unknown-currency");
}

TEST_CASE("an offer that ends before it begins is a warning") {
    Reader desk;
    (void)desk.list(
        "supplier: s\nfrom: 2026-10-01\noffers: [{item: a, pack: 1, price: 2, until: 2026-09-30}]\n");
    CHECK_FALSE(desk.found.has_errors());
    CHECK(desk.marked() == "3:39+5 never-in-force");
}

TEST_CASE("the most packs that may be had are a whole number above nothing") {
    Reader desk;
    PriceList const list =
        desk.list("supplier: a\noffers: [{item: b, pack: 1 kg, price: 2.00, most packs: 4}]\n");
    CHECK(desk.said() == "");
    CHECK(list.offers.front().most_packs == groat::Integer(4));
    CHECK(offer_marks("pack: 1 kg, price: 2, most packs: 1/2") == "2:54+3 not-whole");
    CHECK(offer_marks("pack: 1 kg, price: 2, most packs: 0") == "2:54+1 not-positive");
}
