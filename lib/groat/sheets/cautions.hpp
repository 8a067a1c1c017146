/// The cautions that every sheet carries. They defer to local codes and licensed practice.
#pragma once

#include <groat/model/allergen.hpp>
#include <groat/model/keeping.hpp>
#include <groat/model/words.hpp>
#include <groat/paper/sheet.hpp>
#include <groat/sheets/shape_shared.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// "Keep cold, at or below 5 °C (41 °F); eat within 4 days." Empty where nothing is stated.
/// Source  FDA Food Code 2022, 3-501.16(A)(2) for the temperature
[[nodiscard]] inline std::string keeping_words(Keeping const& keeping,
                                               Words const& words = Words::english()) {
    std::string text;
    if (keeping.at) {
        switch (*keeping.at) {
        case KeepAt::room: text = words("keep at room"); break;
        case KeepAt::cool: text = words("keep cool"); break;
        case KeepAt::cold: text = words("keep cold"); break;
        case KeepAt::frozen: text = words("keep frozen"); break;
        }
    }
    if (keeping.days) {
        if (!text.empty()) text += "; ";
        text += *keeping.days == 1 ? words("eat today")
                                   : words("eat within", {{"days", std::to_string(*keeping.days)}});
    }
    return text;
}

/// "contains milk, egg", or that nothing stands in the records.
[[nodiscard]] inline std::string allergen_words(AllergenSet const& set,
                                                Words const& words = Words::english()) {
    std::string names;
    for (Allergen const* allergen : set) {
        if (!names.empty()) names += ", ";
        names += words.name_of(*allergen);
    }
    return names.empty() ? words("no allergens") : words("contains", {{"allergens", names}});
}

inline constexpr auto maker_allergen_caution = english_word("check labels");
inline constexpr auto maker_cold_caution = english_word("cold by law");
inline constexpr auto maker_law_caution =
    "Tax, labelling and wage law are local: this calculates with the rates it is given.";

/// The cautions at the foot of a maker's sheet.
[[nodiscard]] inline Remarks maker_cautions(bool has_cold) {
    Remarks cautions =
        remarks_of<sheet_shapes::shared::cautions>("Cautions", {maker_allergen_caution});
    if (has_cold) cautions.lines.emplace_back(maker_cold_caution);
    cautions.lines.emplace_back(maker_law_caution);
    return cautions;
}

/// Allergens by the names that the books use.
[[nodiscard]] inline std::vector<std::string> allergen_names(AllergenSet const& set) {
    std::vector<std::string> names;
    for (Allergen const* allergen : set) names.emplace_back(allergen->name);
    return names;
}

} // namespace groat
