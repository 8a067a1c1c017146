/// ingredients.yaml and supplies.yaml: what is bought, by name.
#pragma once

#include <groat/books/read_common.hpp>
#include <groat/books/read_yields.hpp>
#include <groat/model/ingredient.hpp>
#include <string_view>
#include <vector>

namespace groat {

/// `allergens:`, each by its name.
bool read_value(AllergenSet& set, Node const& node, KeyShape const& key, Reading const& reading);

} // namespace groat

namespace groat::shapes {

inline constexpr std::string_view buying_ways[] = {"as used", "whole packs", "metered"};
inline constexpr std::string_view by_product_ways[] = {"not used", "used"};
inline constexpr Value an_allergen = written(ValueKind::text, "an allergen");

inline constexpr KeyShape buy_key{"buy", may, one_of(buying_ways), "whole packs",
                                  "Whether costs are of what is used, or of the packs opened."};
inline constexpr KeyShape prefer_key{"prefer", may, to<&Ingredient::preferred_supplier>(a_name),
                                     "Mill Road Provisions", "The supplier whose price counts."};

inline constexpr KeyShape ingredient_keys[] = {
    {"density", may, to<&Ingredient::densities>(some_densities), "125 g / cup",
     "What a volume of it weighs."},
    {"each", may, to<&Ingredient::grams_each>(a_mass), "50 g", "What one piece of it weighs."},
    {"yield", may, a_yield, "88 %", "What is usable of what is bought."},
    {"by-products", may, to<&Ingredient::uses_by_products>(one_of(by_product_ways)), "used",
     "Whether what is cut off is used, so that its worth comes off the cost."},
    {"allergens", may, to<&Ingredient::allergens>(list_of(an_allergen)), "[wheat]",
     "The allergens in it."},
    {"label", may, to<&Ingredient::label>(a_text), "wheat flour", "What labels call it."},
    {"made of", may, to<&Ingredient::made_of>(texts), "[cocoa mass, sugar]",
     "What it is made of, for labels."},
    {"keep", may, to<&Ingredient::keeping, &Keeping::at>(one_of(keep_at_words)), "cold",
     "Where it is kept."},
    {"shelf life", may, to<&Ingredient::keeping, &Keeping::days>(some_days), "30 days",
     "How long it keeps."},
    buy_key,
    prefer_key,
};
inline constexpr Synonym ingredient_synonyms[] = {
    {"weight", "each"},
    {"weight each", "each"},
    {"contains", "made of"},
    {"ingredients", "made of"},
    {"storage", "keep"},
    {"keeps", "shelf life"},
    {"supplier", "prefer"},
    {"preferred supplier", "prefer"},
    {"waste", "yield", "write what is usable, as 'yield: 88 %'"},
    {"price", {}, "prices stand in the folder prices, a list for each supplier"},
    {"cost", {}, "prices stand in the folder prices, a list for each supplier"},
};
inline constexpr Shape ingredient{"ingredient", "this ingredient", ingredient_keys,
                                  ingredient_synonyms};
inline constexpr Value an_ingredient = mapping(ingredient) | nothing;
inline constexpr Value some_ingredients = names_to("ingredients", an_ingredient);

inline constexpr KeyShape supply_keys[] = {buy_key, prefer_key};
inline constexpr Synonym supply_synonyms[] = {
    {"supplier", "prefer"},
    {"preferred supplier", "prefer"},
    {"price", {}, "prices stand in the folder prices, a list for each supplier"},
    {"cost", {}, "prices stand in the folder prices, a list for each supplier"},
};
inline constexpr Shape supply{"supply", "this supply", supply_keys, supply_synonyms};
inline constexpr Value a_supply = mapping(supply) | nothing;
inline constexpr Value some_supplies = names_to("supplies", a_supply);

} // namespace groat::shapes

namespace groat {

/// The entries of a document, each a name with its facts; a name with nothing behind it has none.
/// An entry with errors is still an ingredient, so that what uses it does not seem to be unknown.
[[nodiscard]] std::vector<Ingredient> read_ingredients(Node const& node, Ingredient::Kind kind,
                                                       Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_ingredients.ipp>
#endif
