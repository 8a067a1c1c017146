#pragma once

#include <groat/trial/conversion.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <utility>

namespace groat {

GROAT_INLINE Convertible convertible(Ingredient const& ingredient) {
    return {ingredient.name, ingredient.densities, ingredient.grams_each,
            ingredient.grams_each_origin,
            ingredient.is_supply() ? std::string() : std::string("ingredients.yaml")};
}

GROAT_INLINE Convertible convertible(Formula const& formula) {
    return {formula.name, formula.densities, std::nullopt, {}, "its formula"};
}

GROAT_INLINE Result<Quantity> parse_unit(std::string_view text, Measures measures) {
    std::string_view const word = trimmed(text);
    if (word.empty()) return refuse("bad-unit", "the unit is empty", "write g, cup or each");
    if (number_detail::is_digit(word.front()) || word.front() == '-' || word.front() == '.')
        return refuse("bad-unit", fmt::format("'{}' is an amount, not a unit", shortened(word, 32)),
                      "the unit to convert into comes last, as in: groat convert '2 cup' mL");
    bool const is_scoop = word.front() == '#';
    auto one = parse_quantity(is_scoop ? std::string(word) : "1 " + std::string(word), measures);
    return one;
}

namespace conversion_detail {

class Converter {
public:
    Converter(Quantity const& from, Quantity const& unit, Convertible const& thing)
        : thing_(thing), result_{from, unit, 0, {}} {}

    Result<Conversion> result() {
        Dimension const have = result_.from.dimension;
        Dimension const want = result_.unit.dimension;
        if (have == want) {
            result_.amount = result_.from.amount / result_.unit.amount;
            return std::move(result_);
        }
        if (!is_amount(have) || !is_amount(want))
            return refuse("wrong-dimension",
                          fmt::format("a {} cannot become a {}", to_text(have), to_text(want)),
                          fmt::format("name a unit of {}", to_text(have)));
        if (thing_.name.empty())
            return refuse(
                "of-what",
                fmt::format("a {} becomes a {} only of a certain thing", to_text(have),
                            to_text(want)),
                "name it between the two, as in: groat convert '2 3/4 cup' 'plain flour' g");
        auto const grams = grams_of_amount();
        if (!grams) return Refused(grams.error());
        auto const each = grams_of_unit();
        if (!each) return Refused(each.error());
        result_.amount = *grams / *each;
        return std::move(result_);
    }

private:
    static bool is_amount(Dimension dimension) {
        return dimension == Dimension::mass || dimension == Dimension::volume ||
               dimension == Dimension::count;
    }

    Result<Number> grams_of_amount() { return in_grams(result_.from); }
    Result<Number> grams_of_unit() { return in_grams(result_.unit); }

    Result<Number> in_grams(Quantity const& quantity) {
        if (quantity.is(Dimension::mass)) return quantity.amount;
        if (quantity.is(Dimension::volume)) {
            if (thing_.densities.empty()) return missing("density", "... g / cup", "one cup of it");
            Density const& density = density_for(quantity.unit, thing_.densities);
            result_.facts.push_back({density, 0, density.origin});
            return quantity.amount * density.grams_per_millilitre;
        }
        if (!thing_.grams_each) return missing("each", "... g", "one");
        result_.facts.push_back({std::nullopt, *thing_.grams_each, thing_.grams_each_origin});
        return quantity.amount * *thing_.grams_each;
    }

    [[nodiscard]] Refused missing(std::string_view key, std::string_view example,
                                  std::string_view sample) const {
        std::string what =
            fmt::format("{} of '{}' is not known",
                        key == "each" ? "the weight of one" : "the density", thing_.name);
        if (thing_.where_to_write.empty())
            return refuse("is-supply", fmt::format("'{}' is a supply and is counted", thing_.name),
                          "supplies have neither weight nor volume here");
        if (thing_.where_to_write != "ingredients.yaml" && key == "each")
            return refuse("missing-weight", std::move(what),
                          fmt::format("what a piece of a formula weighs is calculated: see groat "
                                      "cost '{}'",
                                      thing_.name));
        return refuse(
            key == "each" ? Code("missing-weight") : Code("missing-density"), std::move(what),
            thing_.where_to_write == "ingredients.yaml"
                ? fmt::format("weigh {} and write '{}: {{{}: {}}}' in ingredients.yaml", sample,
                              thing_.name, key, example)
                : fmt::format("weigh {} and write '{}: {}' in its formula", sample, key, example));
    }

    Convertible const& thing_;
    Conversion result_;
};

} // namespace conversion_detail

GROAT_INLINE Result<Conversion> convert(Quantity const& from, Quantity const& unit,
                                        Convertible const& thing) {
    return conversion_detail::Converter(from, unit, thing).result();
}

} // namespace groat
