#include "reading.hpp"

#include <groat/books/read_receipts.hpp>

#include <doctest/doctest.h>

#include <string>

using groat::Number;
using groat::Receipt;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    Receipt receipt(std::string const& text) { return read_receipt(node(text), reading); }
};

std::string receipt_marks(std::string const& text) {
    Reader desk;
    (void)desk.receipt(text);
    return desk.marked();
}

/// What is found in an item of `item: a` and this; what is added begins in column 19 of line 3.
std::string item_marks(std::string const& text) {
    return receipt_marks("bought: 2026-11-20\nsupplier: s\nitems: [{item: a, " + text + "}]\n");
}

} // namespace

TEST_CASE("a receipt says the day, from whom, and what was paid for how many packs") {
    Reader desk;
    Receipt const receipt = desk.receipt(R"(
bought: 2026-11-20
supplier: Corner Dock Cash & Carry
tax included: 7 %
items:
  - {item: butter, pack: 1 lb, packs: 6, paid: 25.14}
  - {item: crate of cream, pack: 12 x 1 L, packs: 1, paid: 35.00, deposit: 2.00, stopgap: yes, tax included: 0 %}
)");
    CHECK(desk.said().empty());
    CHECK(groat::iso_date(receipt.bought) == "2026-11-20");
    CHECK(receipt.supplier.name == "Corner Dock Cash & Carry");
    REQUIRE(receipt.items.size() == 2);
    CHECK(receipt.items[0].packs == 6);
    CHECK(receipt.items[0].paid.amount() == Number(2514, 100));
    CHECK(receipt.items[0].tax_included.value() == Number(7, 100));
    CHECK_FALSE(receipt.items[0].is_stopgap);
    CHECK(receipt.items[1].pack.amount == 12000);
    CHECK(receipt.items[1].pack_text == "12 x 1 L");
    CHECK(receipt.items[1].deposit.amount() == 2);
    CHECK(receipt.items[1].tax_included.value() == 0);
    CHECK(receipt.items[1].is_stopgap);
}

TEST_CASE("a receipt needs its day, its supplier and what was bought") {
    CHECK(receipt_marks("items: []\n") == "1:1+1 missing-key 1:1+1 missing-key");
    CHECK(receipt_marks("bought: 2026-11-20\nsupplier: s\n") == "1:1+1 missing-key");
    CHECK(receipt_marks("bought: yesterday\nsupplier: s\nitems: []\n") == "1:9+9 bad-date");
}

TEST_CASE("an item needs its pack, how many and what was paid") {
    CHECK(item_marks("pack: 1 lb") == "3:9+1 missing-key 3:9+1 missing-key");
    CHECK(item_marks("pack: 1 lb, packs: 0, paid: 3") == "3:38+1 not-positive");
    CHECK(item_marks("pack: 1 lb, packs: 1/2, paid: 3") == "3:38+3 not-whole");
    CHECK(item_marks("pack: 1 lb, packs: 2, paid: -3") == "3:47+2 negative-money");
    CHECK(item_marks("pack: 1 h, packs: 2, paid: 3") == "3:25+3 wrong-dimension");
    CHECK(item_marks("pack: 1 lb, packs: 2, price: 3") == "3:9+1 missing-key 3:41+5 unknown-key");
}

TEST_CASE("a deposit is part of what was paid") {
    CHECK(item_marks("pack: 1 lb, packs: 2, paid: 3, deposit: 3").empty());
    CHECK(item_marks("pack: 1 lb, packs: 2, paid: 3, deposit: 3.01") ==
          "3:50+7 deposit-above-paid");
}
