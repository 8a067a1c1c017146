#pragma once

#include <groat/books/read_ingredients.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_yields.hpp>

#include <fmt/ranges.h>

#include <string_view>
#include <utility>

namespace groat {

namespace read_ingredients_detail {

/// What food and supplies have alike.
inline void read_buying(auto& fields, Ingredient& ingredient, Reading const& reading) {
    fields.read_into(ingredient, reading);
    auto const way = read_word(fields.at("buy"), shapes::buying_ways, reading);
    ingredient.buys_whole_packs = way == 1;
    ingredient.is_metered = way == 2;
    fields.close();
}

inline void read_food(Node const& node, Ingredient& food, Reading const& reading) {
    Fields<shapes::ingredient> fields(node, reading.found);
    food.yield = read_yield(fields.at("yield"), food.yield_source, reading);
    read_buying(fields, food, reading);
    if (food.grams_each) food.grams_each_origin = fields.at("each")->where;
}

} // namespace read_ingredients_detail

GROAT_INLINE bool read_value(AllergenSet& set, Node const& node, KeyShape const&,
                             Reading const& reading) {
    for (Node const& each : read_list(&node, "a list of allergens", reading)) {
        auto const allergen = read_scalar(
            &each, "an allergen", reading, [](std::string_view text) -> Result<Allergen const*> {
                if (Allergen const* const found = find_allergen(text)) return found;
                auto const names = allergen_names();
                auto const near = nearest_name(text, names);
                return refuse("unknown-allergen",
                              fmt::format("'{}' is no allergen known here", shortened(text, 32)),
                              near ? fmt::format("did you mean '{}'?", *near)
                                   : fmt::format("possible are: {}", fmt::join(names, ", ")));
            });
        if (allergen) set.insert(*allergen);
    }
    return true;
}

GROAT_INLINE std::vector<Ingredient> read_ingredients(Node const& node, Ingredient::Kind kind,
                                                      Reading const& reading) {
    namespace parts = read_ingredients_detail;
    bool const is_food = kind == Ingredient::Kind::food;
    std::vector<Ingredient> all;
    if (!node.is_mapping()) {
        expected(is_food ? "a mapping of ingredients" : "a mapping of supplies", node,
                 reading.found, "write a line 'name: {...}' for each");
        return all;
    }
    all.reserve(node.items.size());
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        if (!is_name(node.keys[i], reading)) continue;
        std::size_t const errors = reading.found.errors_met();
        Ingredient ingredient;
        ingredient.name = node.keys[i].text;
        ingredient.kind = kind;
        ingredient.origin = node.keys[i].where;
        if (!node.items[i].is_null()) {
            if (is_food) {
                parts::read_food(node.items[i], ingredient, reading);
            } else {
                Fields<shapes::supply> fields(node.items[i], reading.found);
                parts::read_buying(fields, ingredient, reading);
            }
        }
        ingredient.is_in_doubt = node.items[i].is_in_doubt || reading.found.errors_met() > errors;
        all.push_back(std::move(ingredient));
    }
    return all;
}

} // namespace groat
