#pragma once

#include <groat/model/convert.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE std::optional<Number> grams_of_volume(Number const& millilitres, Unit const* unit,
                                                   std::vector<Density> const& densities) {
    if (densities.empty()) return std::nullopt;
    return millilitres * density_for(unit, densities).grams_per_millilitre;
}

GROAT_INLINE Flaw missing_mass(Dimension from, Ingredient const& ingredient, std::string_view how,
                               std::string_view otherwise) {
    if (from == Dimension::volume)
        return {"missing-density",
                fmt::format("'{}' is {}, but its density is not known", ingredient.name, how),
                fmt::format("weigh one cup of it and write '{}: {{density: ... g / cup}}' in "
                            "ingredients.yaml{}",
                            ingredient.name, otherwise)};
    return {"missing-weight",
            fmt::format("'{}' is {}, but the weight of one is not known", ingredient.name, how),
            fmt::format("weigh one and write '{}: {{each: ... g}}' in ingredients.yaml{}",
                        ingredient.name, otherwise)};
}

GROAT_INLINE Result<Number> grams_of(Quantity const& quantity, Ingredient const& ingredient) {
    switch (quantity.dimension) {
    case Dimension::mass: return quantity.amount;
    case Dimension::volume:
        if (auto const grams =
                grams_of_volume(quantity.amount, quantity.unit, ingredient.densities))
            return *grams;
        return Refused(missing_mass(Dimension::volume, ingredient, "measured by volume here",
                                    ", or give the amount in grams"));
    case Dimension::count:
        if (ingredient.grams_each) return quantity.amount * *ingredient.grams_each;
        return Refused(missing_mass(Dimension::count, ingredient, "counted here",
                                    ", or give the amount in grams"));
    default:
        return refuse(
            "wrong-dimension",
            fmt::format("a {} is no amount of '{}'", to_text(quantity.dimension), ingredient.name),
            "give a mass, a volume or a count");
    }
}

GROAT_INLINE Result<Number> pieces_of(Quantity const& quantity, Ingredient const& supply) {
    if (quantity.is(Dimension::count)) return quantity.amount;
    return refuse("wrong-dimension",
                  fmt::format("'{}' is a supply and is counted, but this is a {}", supply.name,
                              to_text(quantity.dimension)),
                  "write how many there are, as 'pack: 200' or 'pack: 4 x 50'");
}

GROAT_INLINE Flaw missing_mass(Ingredient const& ingredient) {
    return ingredient.base == Dimension::count
               ? missing_mass(Dimension::count, ingredient, "bought by the piece", "")
               : missing_mass(Dimension::volume, ingredient, "bought by volume", "");
}

GROAT_INLINE Result<Number> amount_in(Quantity const& quantity, Ingredient const& ingredient) {
    if (ingredient.is_supply()) return pieces_of(quantity, ingredient);
    if (ingredient.base == Dimension::mass) return grams_of(quantity, ingredient);
    if (quantity.is(ingredient.base)) return quantity.amount;
    if (quantity.is(Dimension::mass)) return Refused(missing_mass(ingredient));
    auto const grams = grams_of(quantity, ingredient);
    return Refused(grams ? missing_mass(ingredient) : grams.error());
}

GROAT_INLINE Result<Number> grams_of(Quantity const& quantity, Formula const& formula) {
    switch (quantity.dimension) {
    case Dimension::mass: return quantity.amount;
    case Dimension::volume:
        if (auto const grams = grams_of_volume(quantity.amount, quantity.unit, formula.densities))
            return *grams;
        return refuse(
            "missing-density",
            fmt::format("'{}' is measured by volume here, but its density is not known",
                        formula.name),
            "weigh one cup of it and write 'density: ... g / cup' in its formula, or give the "
            "amount in grams");
    default:
        return refuse(
            "wrong-dimension",
            fmt::format("'{}' is made by mass, but this is a {}", formula.name,
                        to_text(quantity.dimension)),
            "give the amount in grams, or let the formula make pieces ('portion' or 'makes')");
    }
}

} // namespace groat
