#include <groat/books/read_common.hpp>
#include <groat/books/read_formulas.hpp>
#include <groat/books/read_orders.hpp>
#include <groat/books/read_prices.hpp>
#include <groat/books/shape_files.hpp>
#include <groat/books/shape_text.hpp>

#include <doctest/doctest.h>

#include <string>

using namespace groat;

namespace {

std::string value_of(Shape const& shape, std::string_view key) {
    return value_in_words(shape.keys[shape.find(key)].value);
}

std::string need_of(Shape const& shape, std::string_view key) {
    return need_in_words(shape.keys[shape.find(key)]);
}

} // namespace

TEST_CASE("what may stand behind a key is told in words, form by form") {
    CHECK(value_of(shapes::formula, "makes") == "a count or a mass");
    CHECK(value_of(shapes::formula, "leftover") == "one of charged, kept");
    CHECK(value_of(shapes::order, "made with") == "a name, or a list of them");
    CHECK(value_of(shapes::sale_unit, "packing") == "a line for each of the supplies: a count");
    CHECK(value_of(shapes::ingredient, "yield") ==
          "a percentage, or the word tested, or a mapping (cited yield)");
}

TEST_CASE("whether a key must stand is told with what it goes with") {
    CHECK(need_of(shapes::formula, "formula") == "must stand");
    CHECK(need_of(shapes::formula, "portion") == "may stand");
    CHECK(need_of(shapes::formula_task, "by") == "must stand unless 'unattended' does");
    CHECK(need_of(shapes::oven_use, "gap") == "may stand; only with 'tray'");
    CHECK(need_of(shapes::oven_use, "holds") == "must stand unless 'trays' does; not with 'trays'");
    CHECK(need_of(shapes::price, "markup") == "may stand; only one of the targets");
}

TEST_CASE("help on a key has each mapping where it stands, and nothing on a word that is none") {
    CHECK(help_on_key("gap") == "gap, in: oven of a formula\n"
                                "  What stays free between two pieces.\n"
                                "  example   gap: 2 cm\n"
                                "  value     a distance\n"
                                "  need      may stand; only with 'tray'\n"
                                "  place     formulas/*.yaml, oven\n");
    CHECK(help_on_key("serves") == "serves, in: formula\n  here it is called 'makes'\n");
    CHECK_FALSE(help_on_key("gpa").has_value());
}

TEST_CASE("every key and every word that stands for one has help") {
    std::vector<std::string> const keys = known_keys();
    CHECK(keys.size() > 200);
    for (std::string const& key : keys) CHECK_MESSAGE(help_on_key(key).has_value(), key);
}

TEST_CASE("the manual has a table for each shape") {
    std::string const manual = manual_of_books();
    for (ShapeUse const& use : shape_uses())
        CHECK(manual.find("\n### " + std::string(use.shape->name) + "\n") != std::string::npos);
}
