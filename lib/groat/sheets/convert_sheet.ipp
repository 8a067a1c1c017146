#pragma once

#include <groat/sheets/convert_sheet.hpp>

#include <groat/base/diagnostic.hpp>
#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/sheets/measure_words.hpp>
#include <groat/sheets/shape_compare.hpp>

#include <fmt/format.h>

#include <string>

namespace groat {

namespace convert_sheet_detail {

/// With as many digits as mean something: six, and whole numbers whole.
inline std::string six_digits(Number const& value) {
    Number size = value.is_negative() ? -value : value;
    unsigned places = 5;
    for (; size >= 10 && places > 0; size = size / 10) --places;
    for (; !size.is_zero() && size < 1 && places < 9; size = size * 10) ++places;
    return decimal_at_most(value, places);
}

using ResultFacts = FactsOf<sheet_shapes::convert::result>;

inline ResultFacts result(Number const& value, std::string const& unit) {
    ResultFacts facts;
    std::string const shown = six_digits(value);
    bool const is_shown_alone = unit == "g" || unit == "each" || unit == "%"; // see `shown_alone`
    facts.add("amount", "That is",
              Figure{is_shown_alone ? shown + ' ' + unit : shown, value, unit});
    constexpr int readable = 1000;
    if (*parse_number(shown) != value && value.denominator() <= readable)
        facts.add("exactly", "Exactly", fmt::format("{} {}", mixed(value), unit));
    return facts;
}

inline Sheet blank(Asked const& asked) {
    std::string const amount(trimmed(asked.amount));
    return {"convert",
            "maker",
            {},
            asked.item.empty() ? amount : fmt::format("{} of {}", amount, trimmed(asked.item)),
            {}};
}

inline std::string place(Span const& origin, Sources const& sources) {
    if (!origin.is_known()) return {};
    return fmt::format(", {} line {}", sources.name(origin.file), origin.line);
}

inline std::string fact_words(UsedFact const& fact) {
    if (!fact.density) return fmt::format("one is {}", mass_text(fact.grams_each));
    Unit const* const per = fact.density->per;
    Number const size = per == nullptr ? Number(1) : per->factor;
    return fmt::format("{} g / {}", decimal_at_most(fact.density->grams_per_millilitre * size, 4),
                       per == nullptr ? "mL" : per->name);
}

/// Cups, spoons and the like are not the same everywhere: which one was used.
inline void add_unit(ResultFacts& facts, MemberOf<sheet_shapes::convert::result> member,
                     Quantity const& quantity) {
    Unit const* const unit = quantity.unit;
    if (!quantity.is(Dimension::volume) || unit == nullptr) return;
    std::string const size = decimal_at_most(unit->factor, 12) + " mL";
    if (unit->name.ends_with('L') || facts.says("One " + unit->name))
        return; // mL, L: the same for all
    facts.add(member, "One " + unit->name, size);
}

/// In cups and spoons, if one of these was asked for.
inline void add_nearest(ResultFacts& facts, Conversion const& conversion, Convertible const& thing,
                        Measures measures) {
    Unit const* const unit = conversion.unit.unit;
    if (unit == nullptr ||
        (unit != find_unit("cup", measures) && unit != find_unit("tbsp", measures) &&
         unit != find_unit("tsp", measures)))
        return;
    KitchenMeasures kitchen = kitchen_measures(measures);
    Number amount = conversion.amount * conversion.unit.amount;
    if (!conversion.from.is(Dimension::volume)) {
        kitchen = *kitchen_measures(thing.densities, measures);
        amount *= density_for(unit, thing.densities).grams_per_millilitre;
    }
    if (!amount.is_positive()) return;
    if (auto const nearest = nearest_measure(amount, kitchen))
        facts.add("nearest", "To measure", measure_words(*nearest));
}

} // namespace convert_sheet_detail

GROAT_INLINE Sheet convert_sheet(Conversion const& conversion, Asked const& asked,
                                 Convertible const& thing, Measures measures,
                                 Sources const& sources) {
    namespace paper = convert_sheet_detail;
    using Member = MemberOf<sheet_shapes::convert::result>;
    Sheet sheet = paper::blank(asked);
    paper::ResultFacts facts = paper::result(conversion.amount, std::string(trimmed(asked.unit)));
    paper::add_nearest(facts, conversion, thing, measures);
    for (UsedFact const& fact : conversion.facts) // of each at most one
        facts.add(fact.density ? Member("density") : Member("each"), "By",
                  paper::fact_words(fact) + paper::place(fact.origin, sources));
    paper::add_unit(facts, "from_unit", conversion.from);
    paper::add_unit(facts, "to_unit", conversion.unit);
    sheet.sections.emplace_back(std::move(facts));
    return sheet;
}

GROAT_INLINE Sheet convert_sheet(Temperature const& temperature, TemperatureScale scale,
                                 Asked const& asked) {
    Sheet sheet = convert_sheet_detail::blank(asked);
    sheet.sections.emplace_back(
        convert_sheet_detail::result(on_scale(temperature, scale), std::string(symbol(scale))));
    return sheet;
}

} // namespace groat
