#include "reading.hpp"

#include <groat/books/read_ingredients.hpp>

#include <doctest/doctest.h>

#include <string>
#include <vector>

using groat::Ingredient;
using groat::Number;
using groat_test::Desk;

namespace {

struct Reader : Desk {
    groat::Reading reading{found, *groat::Currency::find("USD"), groat::Measures::us};

    std::vector<Ingredient> food(std::string const& text) {
        return read_ingredients(node(text), Ingredient::Kind::food, reading);
    }
    std::vector<Ingredient> supplies(std::string const& text) {
        return read_ingredients(node(text), Ingredient::Kind::supply, reading);
    }
};

std::string food_marks(std::string const& text) {
    Reader desk;
    (void)desk.food(text);
    return desk.marked();
}

} // namespace

TEST_CASE("an ingredient has as many facts as are known") {
    Reader desk;
    auto const all = desk.food(
        "plain flour: {density: 125 g / cup, allergens: [wheat], label: wheat flour}\n"
        "sugar: {density: [200 g / cup, 4.2 g / tsp]}\n"
        "lemon: {each: 108 g, yield: 45 %}\n"
        "gel: {buy: whole packs, prefer: Mill Road Provisions, keep: cool, shelf life: 90 days}\n"
        "water: {}\n"
        "rice: {yield: 250 %}\n"
        "salt:\n");
    CHECK(desk.said().empty());
    REQUIRE(all.size() == 7);
    CHECK(all[0].allergens.size() == 1);
    CHECK(all[0].label == "wheat flour");
    CHECK(all[1].densities.size() == 2);
    CHECK(all[1].densities[1].origin == groat::Span{1, 2, 32, 11});
    CHECK(all[2].grams_each_origin == groat::Span{1, 3, 15, 5});
    CHECK(*all[2].grams_each == 108);
    CHECK(all[2].yield->value() == Number(9, 20));
    CHECK(all[3].buys_whole_packs);
    CHECK(all[3].preferred_supplier.name == "Mill Road Provisions");
    CHECK(all[3].keeping.at == groat::KeepAt::cool);
    CHECK(all[3].keeping.days == 90);
    CHECK_FALSE(all[4].yield);
    CHECK(all[6].name == "salt");
    CHECK(all[6].origin == groat::Span{1, 7, 1, 4});
}

TEST_CASE("what flows from a meter is bought so") {
    Reader desk;
    auto const all = desk.food("water: {buy: metered}\nflour: {buy: as used}\n");
    CHECK(desk.said() == "");
    CHECK(all[0].is_metered);
    CHECK_FALSE(all[1].is_metered);
    CHECK_FALSE(all[0].buys_whole_packs);
}

TEST_CASE("what is cut off is used only where it is said") {
    Reader desk;
    auto const all =
        desk.food("lamb: {by-products: used}\nplum: {by-products: not used}\nlemon: {}\n");
    CHECK(desk.said() == "");
    CHECK(all[0].uses_by_products);
    CHECK_FALSE(all[1].uses_by_products);
    CHECK_FALSE(all[2].uses_by_products);
    CHECK(food_marks("a: {by-products: yes}") == "1:18+3 unknown-word");
}

TEST_CASE("supplies can be bought and that is all") {
    Reader desk;
    auto const all =
        desk.supplies("window box: {buy: whole packs, prefer: Mill Road}\nliner: {}\n");
    REQUIRE(all.size() == 2);
    CHECK(all[0].is_supply());
    CHECK(all[0].buys_whole_packs);
    CHECK(desk.said().empty());
    (void)desk.supplies("box: {density: 1 g / mL}\n");
    CHECK(desk.said() == "x.yaml:1:7: error: unknown key 'density' [unknown-key]\n"
                         "  1 | box: {density: 1 g / mL}\n"
                         "    |       ^^^^^^^\n"
                         "  help: this supply may have: buy, prefer\n");
}

TEST_CASE("facts that cannot be are refused, and the ingredient is kept") {
    Reader desk;
    auto const all = desk.food("plum: {yield: 0 %}\n");
    CHECK(all.size() == 1);
    CHECK(desk.marked() == "1:15+3 rate-out-of-range");
    CHECK(food_marks("a: {density: 125 g}") == "1:14+5 bad-density");
    CHECK(food_marks("a: {density: 0 g / cup}") == "1:14+9 bad-density");
    CHECK(food_marks("a: {each: 3}") == "1:11+1 wrong-dimension");
    CHECK(food_marks("a: {each: 0 g}") == "1:11+3 not-positive");
    CHECK(food_marks("a: {yield: 45}") == "1:12+2 bad-percent");
    CHECK(food_marks("a: {allergens: [wheat, gluten]}") == "1:24+6 unknown-allergen");
    CHECK(food_marks("a: {allergens: wheat}").empty()); // one stands for a list of one
    CHECK(food_marks("a: {allergens: {wheat: yes}}") == "1:16+1 wrong-kind");
    CHECK(food_marks("a: {buy: packs}") == "1:10+5 unknown-word");
    CHECK(food_marks("a: {keep: fridge}") == "1:11+6 unknown-word");
    CHECK(food_marks("a: {shelf life: long}") == "1:17+4 bad-days");
    CHECK(food_marks("a: {alergens: [milk]}") == "1:5+8 unknown-key");
    CHECK(food_marks("a: 125 g / cup") == "1:4+11 wrong-kind");
    CHECK(food_marks("[a, b]") == "1:1+1 wrong-kind");
    CHECK(food_marks("'': {}") == "1:1+2 bad-name");
}
