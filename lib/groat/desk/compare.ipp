#pragma once

#include <groat/desk/compare.hpp>

#include <groat/base/linkage.hpp>
#include <groat/desk/answer.hpp>
#include <groat/desk/lookup.hpp>
#include <groat/model/convert.hpp>
#include <groat/price/quote.hpp>

#include <utility>

namespace groat::desk {

namespace compare_detail {

/// "20 kg" of an ingredient, in the unit that it is costed by.
inline Result<Number> amount_said(std::string const& text, Ingredient const& ingredient,
                                  Measures measures) {
    auto const wrong = [](std::string const& why) { return refuse({}, "--amount: " + why); };
    auto const quantity = parse_quantity(text, measures);
    if (!quantity) return wrong(quantity.error().what);
    auto const units = amount_in(*quantity, ingredient);
    if (!units) return wrong(units.error().what);
    if (!units->is_positive()) return wrong("it must be above 0");
    return units;
}

} // namespace compare_detail

GROAT_INLINE std::optional<std::vector<Number>> taken_by_orders(LinkedBook const& linked, Date date,
                                                                Diagnostics& found) {
    Book const& book = linked.book();
    std::vector<Number> taken(book.ingredients.size());
    for (Order const& order : book.orders) {
        Costing const costing(linked, order.date.value_or(date));
        auto const result = quote(costing, order, found);
        if (!result) return std::nullopt;
        for (IngredientUse const& use : result->cost.ingredients)
            taken[use.ingredient] += use.usable;
        for (IngredientUse const& use : result->cost.supplies) taken[use.ingredient] += use.bought;
    }
    return taken;
}

GROAT_INLINE Result<std::vector<Comparison>> comparisons_wished(LinkedBook const& linked, Date date,
                                                                CompareWish const& wish,
                                                                Diagnostics& found) {
    Book const& book = linked.book();
    auto named = find_ingredients(book, wish.names);
    if (!named) return Refused(named.error());
    std::vector<std::size_t> wanted = *std::move(named);
    if (wish.all)
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if (!book.offers_of[i].empty()) wanted.push_back(i);
    std::optional<std::vector<Number>> taken;
    if (wish.by_orders && !(taken = taken_by_orders(linked, date, found))) return as_found();
    if (taken && wish.names.empty() && !wish.all)
        for (std::size_t i = 0; i < book.ingredients.size(); ++i)
            if ((*taken)[i].is_positive()) wanted.push_back(i);
    if (wanted.empty())
        return refuse({}, "nothing to compare", "name ingredients, or say --all or --orders");
    std::vector<Comparison> comparisons;
    bool is_well = true;
    for (std::size_t const index : wanted) {
        Ingredient const& ingredient = book.ingredients[index];
        std::optional<Number> amount;
        if (taken && (*taken)[index].is_positive()) amount = (*taken)[index];
        if (!wish.amount.empty()) {
            auto const said =
                compare_detail::amount_said(wish.amount, ingredient, book.shop.measures);
            if (!said) return Refused(said.error());
            amount = *said;
        }
        auto comparison = compare_offers(book, index, date, amount);
        if (comparison) {
            comparisons.push_back(std::move(*comparison));
        } else if (!wish.all || comparison.error().code != Code("future-price")) {
            found.error(ingredient.origin, comparison.error());
            is_well = false;
        }
    }
    if (!is_well) return as_found();
    return comparisons;
}

} // namespace groat::desk
