#pragma once

#include <groat/desk/convert.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/desk/lookup.hpp>

namespace groat::desk {

GROAT_INLINE Result<Asked> asked_in(std::vector<std::string> const& words) {
    if (words.size() < 2 || words.size() > 3)
        return refuse("words", "an amount and a unit are needed, and between them what it is of",
                      "words that belong together go into quotation marks, as in: groat convert "
                      "'2 3/4 cup' 'plain flour' g");
    return Asked{words.front(), words.size() == 3 ? std::string_view(words[1]) : std::string_view(),
                 words.back()};
}

GROAT_INLINE bool is_about_temperature(Asked const& asked) {
    return is_temperature(asked.amount) || find_scale(asked.unit);
}

GROAT_INLINE Result<Sheet> temperature_sheet(Asked const& asked) {
    auto const scale = find_scale(asked.unit);
    if (!asked.item.empty())
        return refuse("bad-temperature",
                      fmt::format("a temperature is the same for '{}' as for anything else",
                                  shortened(asked.item, 40)),
                      "write only the temperature and the scale, as in: groat convert '350 F' C");
    if (!is_temperature(asked.amount) && scale)
        return refuse("wrong-dimension",
                      fmt::format("'{}' is no temperature and cannot become {}",
                                  shortened(asked.amount, 40), symbol(*scale)),
                      "write a number and its scale, as 350 F or 175 C");
    auto const temperature = parse_temperature(asked.amount);
    if (!temperature) return Refused(temperature.error());
    if (!scale)
        return refuse("wrong-dimension",
                      fmt::format("a temperature cannot become '{}'", shortened(asked.unit, 40)),
                      "the scales are F, C and K");
    return convert_sheet(*temperature, *scale, asked);
}

GROAT_INLINE Result<Convertible> thing_called(Book const& book, std::string const& name) {
    if (name.empty()) return Convertible{};
    if (auto const found = book.ingredient_index.find(name); found != book.ingredient_index.end())
        return convertible(book.ingredients[found->second]);
    if (Formula const* const formula = book.find_formula(name)) return convertible(*formula);
    std::vector<std::string> names = names_of(book.ingredients);
    for (Formula const& each : book.formulas) names.push_back(each.name);
    return nothing_called("ingredient or formula", name, names, book,
                          {BookPart::ingredients, BookPart::formulas});
}

GROAT_INLINE Measures measures_called(std::string_view name) {
    for (std::size_t i = 0; i < std::size(unit_detail::measures_names); ++i)
        if (unit_detail::measures_names[i] == name) return static_cast<Measures>(i);
    return Measures::us;
}

GROAT_INLINE std::optional<Result<Sheet>> sheet_without_books(Asked const& asked,
                                                              std::string_view measures,
                                                              bool has_shop) {
    if (is_about_temperature(asked)) return temperature_sheet(asked);
    if (!asked.item.empty() || (has_shop && measures.empty())) return std::nullopt;
    return amount_sheet(asked, measures_called(measures), {}, Sources());
}

GROAT_INLINE Result<Sheet> amount_sheet(Asked const& asked, Measures measures,
                                        Convertible const& thing, Sources const& sources) {
    auto const from = parse_quantity(asked.amount, measures);
    if (!from) return Refused(from.error());
    auto const unit = parse_unit(asked.unit, measures);
    if (!unit) return Refused(unit.error());
    auto const conversion = convert(*from, *unit, thing);
    if (!conversion) return Refused(conversion.error());
    return convert_sheet(*conversion, asked, thing, measures, sources);
}

} // namespace groat::desk
