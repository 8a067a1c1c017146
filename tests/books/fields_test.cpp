#include "reading.hpp"

#include <groat/books/fields.hpp>
#include <groat/books/read_ingredients.hpp>
#include <groat/books/read_prices.hpp>
#include <groat/books/read_shop.hpp>

#include <doctest/doctest.h>
#include <fmt/format.h>

namespace shapes = groat::shapes;
using groat::Fields;
using groat::Node;
using groat_test::Desk;

TEST_CASE("a field is found by its key, and one that is absent is no error by itself") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("{item: flour, pack: 25 lb}"), desk.found);
    REQUIRE(fields.at("item") != nullptr);
    CHECK(fields.at("pack")->text == "25 lb");
    CHECK(fields.at("code") == nullptr);
    CHECK(fields.place_of("pack").column == 15);
    CHECK(fields.place_of("code") == fields.where());
    fields.close();
    CHECK(desk.said().empty());
}

TEST_CASE(
    "a key that must stand and is missing is reported at the mapping, with something to type") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("offers:\n  - {item: flour}\n").items[0].items[0],
                                 desk.found);
    (void)fields.at("item");
    CHECK(fields.at("price") == nullptr);
    fields.close();
    CHECK(desk.said() == "x.yaml:2:5: error: 'price' is missing from this offer [missing-key]\n"
                         "  2 |   - {item: flour}\n"
                         "    |     ^\n"
                         "  help: add 'price: 13.80'\n");
}

TEST_CASE("a key that must stand by what else stands has an example for there") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("{item: flour}"), desk.found);
    (void)fields.at("item");
    CHECK(fields.needed("code", "FL-2") == nullptr);
    fields.close();
    CHECK(desk.said().find("help: add 'code: FL-2'") != std::string::npos);
}

TEST_CASE("a misspelt key is one error with its near miss, and is read as what was meant") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("- {item: plain flour, prise: 13.80}\n").items[0],
                                 desk.found);
    CHECK(fields.at("price")->text == "13.80");
    CHECK(fields.place_of("price").column == 23);
    (void)fields.at("item");
    fields.close();
    CHECK(desk.said() == "x.yaml:1:23: error: unknown key 'prise' [unknown-key]\n"
                         "  1 | - {item: plain flour, prise: 13.80}\n"
                         "    |                       ^^^^^\n"
                         "  help: did you mean 'price'?\n");
}

TEST_CASE("a misspelt key is reported before anybody asks for a value") {
    Desk desk;
    Fields<shapes::offer> const fields(desk.node("{prise: 13.80}"), desk.found);
    CHECK(desk.marked() == "1:2+5 unknown-key");
}

TEST_CASE("what stands beside the key itself is not read in its place") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("{prise: 1, price: 2}"), desk.found);
    CHECK(fields.at("price")->text == "2");
}

TEST_CASE(
    "what cannot be the value of the key that is near is not read as it, and that is not missed") {
    Desk desk;
    Fields<shapes::price_list> fields(desk.node("{supplier: Mill, offres: none}"), desk.found);
    CHECK(fields.at("offers") == nullptr);
    (void)fields.at("supplier");
    fields.close();
    CHECK(desk.marked() == "1:18+6 unknown-key");
}

TEST_CASE("a word of the trade is answered by what it is called here, and read as that") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("{product: plain flour}"), desk.found);
    CHECK(fields.at("item")->text == "plain flour");
    fields.close();
    CHECK(desk.said() == "x.yaml:1:2: error: unknown key 'product' [unknown-key]\n"
                         "  1 | {product: plain flour}\n"
                         "    |  ^^^^^^^\n"
                         "  help: here it is called 'item'\n");
}

TEST_CASE("a word of the trade that takes another value here is answered by what to write") {
    Desk desk;
    Fields<shapes::ingredient> fields(desk.node("{waste: 12 %}"), desk.found);
    CHECK(fields.at("yield") == nullptr);
    fields.close();
    CHECK(desk.said().find("help: write what is usable, as 'yield: 88 %'") != std::string::npos);
}

TEST_CASE("a key that is declared and has no use here is an error, with what it goes with") {
    Desk desk;
    Fields<shapes::offer> fields(desk.node("{item: flour, code: 1}"), desk.found);
    (void)fields.at("item");
    fields.close();
    CHECK(desk.marked() == "1:15+4 unknown-key");
}

TEST_CASE("a key with an underscore for a blank is recognised") {
    Desk desk;
    Fields<shapes::role> const fields(desk.node("{On_Cost: 12 %}"), desk.found);
    CHECK(desk.said().find("did you mean 'on-cost'?") != std::string::npos);
}

TEST_CASE("a key that is like no other brings the list of those that are known") {
    Desk desk;
    Fields<shapes::role> const fields(desk.node("{colour: red}"), desk.found);
    CHECK(desk.said().find("help: this role may have: wage, on-cost\n") != std::string::npos);
}

TEST_CASE(
    "where a mapping is expected, text and lists are refused once, and nothing is missed then") {
    for (auto const* text : {"deck", "[a, b]", "~"}) {
        Desk desk;
        Node const node = desk.node(std::string("x: ") + text).items[0];
        Fields<shapes::oven> fields(node, desk.found);
        CHECK(fields.at("power") == nullptr);
        fields.close();
        CHECK(desk.found.errors() == 1);
        CHECK(desk.said().find("a mapping for this oven is expected") != std::string::npos);
    }
}

TEST_CASE("which of two shapes a mapping has is told by its key, or by what was meant for it") {
    auto const is_free = [](std::string const& text) {
        Desk desk;
        return groat::is_told_by(desk.node(text), "text", "item");
    };
    CHECK(is_free("{text: hire, price: 1}"));
    CHECK(is_free("{txet: hire, price: 1}"));
    CHECK(is_free("{item: tart, text: hire}"));
    CHECK_FALSE(is_free("{itme: tart, count: 1}"));
    CHECK_FALSE(is_free("{item: tart, txet: 1}"));
}

TEST_CASE("a mapping of a hundred thousand unknown keys is reported in no time") {
    std::string text;
    for (int i = 0; i < 100'000; ++i) text += fmt::format("key {}: x\n", i);
    Desk desk;
    Fields<shapes::offer> const fields(desk.node(text), desk.found);
    CHECK(desk.found.errors() == 100'000);
}
