/// The allergens that food law names. The books say which an ingredient holds; nothing here is tested in a
/// laboratory, and cross-contact is not known to it.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// One allergen as people write it, and what it counts as in two bodies of law (empty: not named there).
///
/// Source  US: 21 USC 321(qq)(1), FALCPA 2004 and FASTER Act 2021, nine allergens.
///         EU: Regulation (EU) 1169/2011, Annex II, fourteen.
struct Allergen {
    std::string_view name;
    std::string_view us;
    std::string_view eu;
};

inline constexpr Allergen allergens[] = {
    {"milk", "milk", "milk"},
    {"egg", "egg", "eggs"},
    {"wheat", "wheat", "cereals containing gluten"},
    {"rye", "", "cereals containing gluten"},
    {"barley", "", "cereals containing gluten"},
    {"oats", "", "cereals containing gluten"},
    {"almond", "tree nuts", "nuts"},
    {"hazelnut", "tree nuts", "nuts"},
    {"walnut", "tree nuts", "nuts"},
    {"cashew", "tree nuts", "nuts"},
    {"pecan", "tree nuts", "nuts"},
    {"brazil nut", "tree nuts", "nuts"},
    {"pistachio", "tree nuts", "nuts"},
    {"macadamia", "tree nuts", "nuts"},
    {"tree nuts", "tree nuts", "nuts"},
    {"peanut", "peanuts", "peanuts"},
    {"soy", "soybeans", "soybeans"},
    {"sesame", "sesame", "sesame"},
    {"fish", "fish", "fish"},
    {"crustaceans", "Crustacean shellfish", "crustaceans"},
    {"molluscs", "", "molluscs"},
    {"celery", "", "celery"},
    {"mustard", "", "mustard"},
    {"lupin", "", "lupin"},
    {"sulphites", "", "sulphur dioxide and sulphites"},
};

/// The allergen of a name, or null.
[[nodiscard]] constexpr Allergen const* find_allergen(std::string_view name) {
    for (Allergen const& allergen : allergens)
        if (allergen.name == name) return &allergen;
    return nullptr;
}

[[nodiscard]] inline std::vector<std::string> allergen_names() {
    std::vector<std::string> names;
    for (Allergen const& allergen : allergens) names.emplace_back(allergen.name);
    return names;
}

/// Some of the allergens, kept in the order of the table above.
using AllergenSet = std::set<Allergen const*>;

} // namespace groat
