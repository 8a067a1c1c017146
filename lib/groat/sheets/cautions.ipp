#pragma once

#include <groat/sheets/cautions.hpp>

#include <groat/base/linkage.hpp>
#include <groat/sheets/shape_shared.hpp>

namespace groat {

GROAT_INLINE std::string keeping_words(Keeping const& keeping, Words const& words) {
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

GROAT_INLINE std::string allergen_words(AllergenSet const& set, Words const& words) {
    std::string names;
    for (Allergen const* allergen : set) {
        if (!names.empty()) names += ", ";
        names += words.name_of(*allergen);
    }
    return names.empty() ? words("no allergens") : words("contains", {{"allergens", names}});
}

GROAT_INLINE Remarks maker_cautions(bool has_cold) {
    Remarks cautions =
        remarks_of<sheet_shapes::shared::cautions>("Cautions", {maker_allergen_caution});
    if (has_cold) cautions.lines.emplace_back(maker_cold_caution);
    cautions.lines.emplace_back(maker_law_caution);
    return cautions;
}

GROAT_INLINE std::vector<std::string> allergen_names(AllergenSet const& set) {
    std::vector<std::string> names;
    for (Allergen const* allergen : set) names.emplace_back(allergen->name);
    return names;
}

} // namespace groat
