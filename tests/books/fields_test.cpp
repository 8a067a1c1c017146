#include "reading.hpp"

#include <groat/books/fields.hpp>

#include <doctest/doctest.h>

using groat::Fields;
using groat::Node;
using groat_test::Desk;

TEST_CASE("a field is found by its key, and one that is absent is no error by itself") {
    Desk desk;
    Fields fields(desk.node("{item: flour, pack: 25 lb}"), "this offer", desk.found);
    REQUIRE(fields.required("item", "plain flour") != nullptr);
    CHECK(fields.optional("pack")->text == "25 lb");
    CHECK(fields.optional("code") == nullptr);
    CHECK(fields.place_of("pack").column == 15);
    CHECK(fields.place_of("code") == fields.where());
    fields.close();
    CHECK(desk.said().empty());
}

TEST_CASE("a required key that is missing is reported at the mapping, with something to type") {
    Desk desk;
    Fields fields(desk.node("offers:\n  - {item: flour}\n").items[0].items[0], "this offer",
                  desk.found);
    (void)fields.required("item", "plain flour");
    CHECK(fields.required("price", "13.80") == nullptr);
    fields.close();
    CHECK(desk.said() == "x.yaml:2:5: error: 'price' is missing from this offer [missing-key]\n"
                         "  2 |   - {item: flour}\n"
                         "    |     ^\n"
                         "  help: add 'price: 13.80'\n");
}

TEST_CASE("a misspelt key is an error with the nearest that its reader knows") {
    Desk desk;
    Fields fields(desk.node("- {item: plain flour, prise: 13.80}\n").items[0], "this offer",
                  desk.found);
    (void)fields.optional("item");
    (void)fields.optional("pack");
    (void)fields.optional("price");
    fields.close();
    CHECK(desk.said() == "x.yaml:1:23: error: unknown key 'prise' [unknown-key]\n"
                         "  1 | - {item: plain flour, prise: 13.80}\n"
                         "    |                       ^^^^^\n"
                         "  help: did you mean 'price'?\n");
}

TEST_CASE("a key with an underscore for a blank is recognised") {
    Desk desk;
    Fields fields(desk.node("{On_Cost: 12 %}"), "this role", desk.found);
    (void)fields.optional("on-cost");
    fields.close();
    CHECK(desk.said().find("did you mean 'on-cost'?") != std::string::npos);
}

TEST_CASE("a key that is like no other brings the list of those that are known") {
    Desk desk;
    Fields fields(desk.node("{colour: red}"), "this role", desk.found);
    (void)fields.optional("wage");
    (void)fields.optional("on-cost");
    fields.close();
    CHECK(desk.said().find("help: this role may have: wage, on-cost\n") != std::string::npos);
}

TEST_CASE(
    "where a mapping is expected, text and lists are refused once, and nothing is missed then") {
    for (auto const* text : {"deck", "[a, b]", "~"}) {
        Desk desk;
        Node const node = desk.node(std::string("x: ") + text).items[0];
        Fields fields(node, "this oven", desk.found);
        CHECK(fields.required("power", "5.5 kW") == nullptr);
        fields.close();
        CHECK(desk.found.errors() == 1);
        CHECK(desk.said().find("a mapping for this oven is expected") != std::string::npos);
    }
}

TEST_CASE("a mapping of a hundred thousand unknown keys is reported in no time") {
    std::string text;
    for (int i = 0; i < 100'000; ++i) text += fmt::format("key {}: x\n", i);
    Desk desk;
    Fields fields(desk.node(text), "this offer", desk.found);
    (void)fields.optional("item");
    fields.close();
    CHECK(desk.found.errors() == 100'000);
}
