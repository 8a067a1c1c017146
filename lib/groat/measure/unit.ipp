#pragma once

#include <groat/measure/unit.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <map>

namespace groat {

namespace unit_detail {

struct Entry {
    std::string_view words; ///< separated by `|`; the first one is the printed name
    Dimension dimension;
    std::string_view factor;
    std::string_view
        kitchen; ///< bare words that mean this unit, before the colon the measures: "us,label:cup"
};

// Source of the factors: international yard and pound agreement (1959), NIST Handbook 44 appendix C,
// UK Weights and Measures Act 1985 schedule 1, 21 CFR 101.9(b)(5)(viii). A stick is a quarter of a pound
// of butter (US trade custom).
inline constexpr Entry entries[] = {
    {"g|gram|grams", Dimension::mass, "1", ""},
    {"mg|milligram|milligrams", Dimension::mass, "0.001", ""},
    {"kg|kilo|kilos|kilogram|kilograms", Dimension::mass, "1000", ""},
    {"oz|ounce|ounces", Dimension::mass, "28.349523125", ""},
    {"lb|lbs|pound|pounds", Dimension::mass, "453.59237", ""},
    {"stick|sticks", Dimension::mass, "113.3980925", ""},
    {"mL|ml|millilitre|millilitres|milliliter|milliliters", Dimension::volume, "1", ""},
    {"cL|cl|centilitre|centilitres|centiliter|centiliters", Dimension::volume, "10", ""},
    {"dL|dl|decilitre|decilitres|deciliter|deciliters", Dimension::volume, "100", ""},
    {"L|l|litre|litres|liter|liters", Dimension::volume, "1000", ""},
    {"US tsp|US teaspoon|US teaspoons", Dimension::volume, "4.92892159375",
     "us:tsp|teaspoon|teaspoons"},
    {"US tbsp|US tablespoon|US tablespoons", Dimension::volume, "14.78676478125",
     "us:tbsp|tablespoon|tablespoons"},
    {"US fl oz|US fluid ounce|US fluid ounces", Dimension::volume, "29.5735295625",
     "us:fl oz|fluid ounce|fluid ounces"},
    {"US cup|US cups", Dimension::volume, "236.5882365", "us:cup|cups"},
    {"US pint|US pints|US pt", Dimension::volume, "473.176473", "us,label:pint|pints|pt"},
    {"US quart|US quarts|US qt", Dimension::volume, "946.352946", "us,label:quart|quarts|qt"},
    {"US gallon|US gallons|US gal", Dimension::volume, "3785.411784",
     "us,label:gallon|gallons|gal"},
    {"label tsp", Dimension::volume, "5",
     "label,metric,australian,imperial:tsp|teaspoon|teaspoons"},
    {"label tbsp", Dimension::volume, "15", "label,metric,imperial:tbsp|tablespoon|tablespoons"},
    {"label fl oz", Dimension::volume, "30", "label:fl oz|fluid ounce|fluid ounces"},
    {"label cup|label cups", Dimension::volume, "240", "label:cup|cups"},
    {"250 mL cup", Dimension::volume, "250", "metric,australian:cup|cups"},
    {"20 mL tbsp", Dimension::volume, "20", "australian:tbsp|tablespoon|tablespoons"},
    {"imperial fl oz|imperial fluid ounce|imperial fluid ounces", Dimension::volume, "28.4130625",
     "imperial:fl oz|fluid ounce|fluid ounces"},
    {"imperial cup|imperial cups", Dimension::volume, "284.130625", "imperial:cup|cups"},
    {"imperial pint|imperial pints|imperial pt", Dimension::volume, "568.26125",
     "imperial:pint|pints|pt"},
    {"imperial quart|imperial quarts|imperial qt", Dimension::volume, "1136.5225",
     "imperial:quart|quarts|qt"},
    {"imperial gallon|imperial gallons|imperial gal", Dimension::volume, "4546.09",
     "imperial:gallon|gallons|gal"},
    {"each|ea|piece|pieces|pc|pcs", Dimension::count, "1", ""},
    {"dozen|dozens|doz", Dimension::count, "12", ""},
    {"baker's dozen|bakers dozen", Dimension::count, "13", ""},
    {"gross", Dimension::count, "144", ""},
    {"s|second|seconds|sec", Dimension::time, "1", ""},
    {"min|minute|minutes", Dimension::time, "60", ""},
    {"h|hour|hours|hr|hrs", Dimension::time, "3600", ""},
    {"day|days", Dimension::time, "86400", ""},
    {"J|joule|joules", Dimension::energy, "1", ""},
    {"MJ|megajoule|megajoules", Dimension::energy, "1000000", ""},
    {"kWh|kilowatt hour|kilowatt hours", Dimension::energy, "3600000", ""},
    {"W|watt|watts", Dimension::power, "1", ""},
    {"kW|kilowatt|kilowatts", Dimension::power, "1000", ""},
    {"m|metre|metres|meter|meters", Dimension::distance, "1", ""},
    {"cm|centimetre|centimetres|centimeter|centimeters", Dimension::distance, "0.01", ""},
    {"mm|millimetre|millimetres|millimeter|millimeters", Dimension::distance, "0.001", ""},
    {"in|inch|inches", Dimension::distance, "0.0254", ""},
    {"km|kilometre|kilometres|kilometer|kilometers", Dimension::distance, "1000", ""},
    {"mi|mile|miles", Dimension::distance, "1609.344", ""},
};

template <class Visit> void each_part(std::string_view list, char separator, Visit visit) {
    while (!list.empty()) {
        std::size_t const end = std::min(list.find(separator), list.size());
        visit(list.substr(0, end));
        list.remove_prefix(std::min(end + 1, list.size()));
    }
}

using Words = std::map<std::string, Unit const*, std::less<>>;

/// Built once, when first asked for; one dictionary for each of the measures.
inline std::vector<Words> const& dictionaries() {
    static std::vector<Words> const result = [] {
        static std::vector<Unit> const units = [] {
            std::vector<Unit> made;
            for (Entry const& entry : entries)
                made.push_back({std::string(entry.words.substr(0, entry.words.find('|'))),
                                entry.dimension, *parse_number(entry.factor)});
            return made;
        }();
        std::vector<Words> made(std::size(measures_names));
        for (std::size_t i = 0; i < units.size(); ++i) {
            Entry const& entry = entries[i];
            for (Words& words : made)
                each_part(entry.words, '|', [&](auto word) { words.emplace(word, &units[i]); });
            std::size_t const colon = entry.kitchen.find(':');
            if (colon == std::string_view::npos) continue;
            each_part(entry.kitchen.substr(0, colon), ',', [&](std::string_view kitchen) {
                for (std::size_t m = 0; m < made.size(); ++m)
                    if (measures_names[m] == kitchen)
                        each_part(entry.kitchen.substr(colon + 1), '|',
                                  [&](auto word) { made[m].emplace(word, &units[i]); });
            });
        }
        return made;
    }();
    return result;
}

} // namespace unit_detail

GROAT_INLINE Unit const* find_unit(std::string_view word, Measures measures) {
    auto const& words = unit_detail::dictionaries()[static_cast<std::size_t>(measures)];
    auto found = words.find(word);
    // Mg and ML would be millions of grams and litres; mJ and mW match nothing in small letters either.
    if (found == words.end() && !(word.size() <= 2 && word.starts_with('M'))) {
        std::string small(word);
        for (char& c : small)
            if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        found = words.find(small);
    }
    return found == words.end() ? nullptr : found->second;
}

GROAT_INLINE std::vector<std::string> unit_words(Measures measures) {
    std::vector<std::string> result;
    for (auto const& [word, unit] : unit_detail::dictionaries()[static_cast<std::size_t>(measures)])
        if (!number_detail::is_digit(word.front()))
            result.push_back(word); // "250 mL cup" cannot be typed
    return result;
}

GROAT_INLINE Result<Number> scoop_volume(Number const& number) {
    if (number < 1 || number > 200)
        return refuse("bad-scoop", fmt::format("there is no scoop number {}", exact(number)),
                      "scoops are numbered by how many fill a US quart: '#16 scoop', '#60 scoop'");
    return Number(Integer(946352946), Integer(1000000)) / number;
}

} // namespace groat
