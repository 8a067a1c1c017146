#include "folder.hpp"
#include "reading.hpp"

#include <groat/books/load.hpp>
#include <groat/books/write_prices.hpp>

#include <doctest/doctest.h>

#include <random>
#include <set>
#include <string>
#include <vector>

using groat::Number;
using groat::Offer;
using groat::PriceList;

namespace {

auto const usd = *groat::Currency::find("USD");

/// Texts that have broken writers of YAML, all with a letter somewhere so that they can name a thing.
std::vector<std::string> const hostile{
    "plum",
    "it's",
    "say \"hi\"",
    "a: b",
    "a:",
    ":a",
    "#a",
    "a #b",
    "a # b",
    "- a",
    "-",
    "--- a",
    "...",
    "? a",
    "[a]",
    "{a: b}",
    "a, b",
    "a]",
    "*a",
    "&a",
    "!a",
    "|",
    "> a",
    "%a",
    "@a",
    "`a`",
    "null",
    "~",
    "Null",
    "NULL",
    "yes",
    "no",
    "true",
    "010",
    "1e3",
    "0x1f",
    "2026-12-01",
    "12:30",
    "=1+1",
    "+1",
    "<<",
    "a\\b",
    "\\",
    "\\n",
    "back`tick",
    "'",
    "\"",
    "''",
    "a''b",
    "Käse",
    "面粉",
    "🥐 bun",
    "e\u0301",
    "a\u00A0b",
    "\u00A0",
    "a\u200Bb",
    "\u202Eabc",
    "\uFEFFa",
    "a\u2028b",
    "a\u0085b",
    "a\x01"
    "b",
    "\x1B[31mred",
    "a\tb",
    "\x7F",
    "a  b",
    "a\\\"b: #",
    "\U0001F9C1",
    "\U000E0041x",
    "a{",
    "a}",
    "{{",
    "$5",
    "100 %",
    "(x)",
    ".5",
    "/",
    "a/b",
};

std::string random_text(std::mt19937& chance) {
    std::string text;
    for (std::size_t i = 0, n = 1 + chance() % 3; i < n; ++i) {
        if (i > 0) text += std::vector<std::string>{" ", ": ", " #", ", ", ""}[chance() % 5];
        text += hostile[chance() % hostile.size()];
    }
    return std::string(groat::trimmed(text));
}

Number random_number(std::mt19937& chance) {
    static int const below[] = {1, 10, 100, 1000, 8, 3, 7};
    return Number(static_cast<int>(1 + chance() % 100000)) / below[chance() % 7];
}

Offer random_offer(std::mt19937& chance) {
    static char const* const packs[] = {"25 lb",    "12 x 500 g", "3",
                                        "15 dozen", "2 3/4 cup",  "½ kg"};
    auto const maybe = [&] { return chance() % 3 == 0; };
    auto const money = [&] { return groat::Money(random_number(chance), usd); };
    auto const day = [&] {
        return groat::Date(groat::Days(20000 + static_cast<int>(chance() % 2000)));
    };
    Offer offer;
    offer.pack_text = packs[chance() % 6];
    offer.pack = *groat::parse_quantity(offer.pack_text, groat::Measures::us);
    offer.price = money();
    if (maybe()) offer.code = random_text(chance) + (chance() % 5 == 0 ? "\nx" : "");
    if (maybe()) offer.freight = money();
    if (maybe()) offer.deposit = money();
    if (maybe()) offer.yield = *groat::Yield::of(random_number(chance) / 100000);
    if (maybe()) offer.from = day();
    if (maybe()) offer.until = offer.from.value_or(day()) + groat::Days(3);
    if (maybe()) offer.breaks = {{2, money()}, {10, money()}};
    if (maybe()) offer.most_packs = groat::Integer(1 + chance() % 40);
    return offer;
}

void check_same(Offer const& written, Offer const& read) {
    CHECK(read.item.name == written.item.name);
    CHECK(read.code == written.code);
    CHECK(read.pack == written.pack);
    CHECK(read.pack_text == written.pack_text);
    CHECK(read.price.amount() == written.price.amount());
    CHECK(read.freight.amount() == written.freight.amount());
    CHECK(read.deposit.amount() == written.deposit.amount());
    CHECK((read.yield == written.yield));
    CHECK((read.from == written.from));
    CHECK((read.until == written.until));
    CHECK((read.tax_included == written.tax_included));
    CHECK((read.most_packs == written.most_packs));
    REQUIRE(read.breaks.size() == written.breaks.size());
    for (std::size_t i = 0; i < read.breaks.size(); ++i) {
        CHECK(read.breaks[i].packs == written.breaks[i].packs);
        CHECK(read.breaks[i].price.amount() == written.breaks[i].price.amount());
    }
}

} // namespace

TEST_CASE("a price list is written as a person would write it") {
    PriceList list;
    list.supplier.name = "Mill & Sons";
    Offer offer;
    offer.item.name = "plum";
    offer.pack_text = "30 lb";
    offer.pack = *groat::parse_quantity("30 lb", groat::Measures::us);
    offer.price = {Number(498, 10), usd};
    offer.freight = {Number(11, 10), usd};
    offer.code = "PL-22";
    offer.from = *groat::parse_date("2026-12-01");
    offer.tax_included = *groat::TaxRate::of(Number(7, 100));
    list.offers = {offer, offer};
    list.offers[1].code = "no: 5";
    list.offers[1].freight = {};
    CHECK(write_price_list(list, "From a\nb.csv") == R"(# From a b.csv

supplier: "Mill & Sons"
from: 2026-12-01
tax included: 7 %
offers:
  - {item: plum, pack: 30 lb, price: 49.80, code: PL-22, freight: 1.10}
  - {item: plum, pack: 30 lb, price: 49.80, code: "no: 5"}
)");
}

TEST_CASE("numbers are written exactly: as decimals that end, else as fractions") {
    CHECK(groat::number_text(Number(69, 5), 2) == "13.80");
    CHECK(groat::number_text(Number(1, 8), 2) == "0.125");
    CHECK(groat::number_text(12) == "12");
    CHECK(groat::number_text(Number(1, 3), 2) == "1/3");
}

TEST_CASE("offers that do not agree on the tax in their prices are no one list") {
    PriceList list;
    list.offers.resize(2);
    list.offers[1].tax_included = *groat::TaxRate::of(Number(7, 100));
    CHECK_THROWS_AS((void)write_price_list(list), std::logic_error);
}

TEST_CASE("every hostile text reads back as it was, as a value between brackets and as a key") {
    for (std::string const& text : hostile) {
        CAPTURE(text);
        groat_test::Desk desk;
        std::string const name = groat::yaml_text(text);
        groat::Node const& node = desk.node("a: {k: " + name + ", l: 1}\n" + name + ": 2\n");
        REQUIRE_MESSAGE(desk.said().empty(), desk.said());
        REQUIRE(node.keys.size() == 2);
        REQUIRE(node.items[0].items.size() == 2);
        CHECK(node.items[0].items[0].text == text);
        CHECK(node.items[0].items[0].is_scalar());
        CHECK(node.keys[1].text == text);
    }
}

TEST_CASE("whatever a list holds, the books read the same offers from what was written") {
    std::mt19937 chance(20261201);
    for (int round = 0; round < 60; ++round) {
        CAPTURE(round);
        PriceList list;
        list.supplier.name = random_text(chance);
        auto const tax = *groat::TaxRate::of(Number(static_cast<int>(chance() % 3) * 7, 100));
        std::string ingredients = "spare: {}\n";
        std::set<std::string> names{"spare"};
        for (std::size_t i = 0, n = chance() % 20; i < n; ++i) {
            Offer offer = random_offer(chance);
            offer.item.name = random_text(chance);
            offer.tax_included = tax;
            if (names.insert(offer.item.name).second)
                ingredients += groat::yaml_text(offer.item.name) + ": {}\n";
            list.offers.push_back(offer);
        }
        groat_test::Folder folder;
        folder.file("shop.yaml", "shop: s\ncurrency: USD\n");
        folder.file("ingredients.yaml", ingredients);
        folder.file("prices/new.yaml", write_price_list(list, random_text(chance)));
        groat::Sources sources;
        groat::Loaded const loaded = groat::load(folder.path(), sources);
        REQUIRE_MESSAGE(loaded.diagnostics.empty(), groat::render(loaded.diagnostics, sources));
        REQUIRE(loaded.book.suppliers.size() == 1);
        CHECK(loaded.book.suppliers[0].name == list.supplier.name);
        REQUIRE(loaded.book.offers.size() == list.offers.size());
        for (std::size_t i = 0; i < list.offers.size(); ++i)
            check_same(list.offers[i], loaded.book.offers[i]);
    }
}
