/// The allergens that food law names. The books say which an ingredient holds; nothing here is tested in a
/// laboratory, and cross-contact is not known to it.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// One allergen as people write it, and what it counts as in two bodies of law (empty: not named there). A kind of
/// cereal, fish or shellfish also says of what it is one: law may want the one name or the other.
///
/// Source  US: 21 USC 321(qq)(1), FALCPA 2004 and FASTER Act 2021, nine allergens; of tree nuts the kinds of FDA's
///         list of January 2025 (from memory), from which coconut is gone. Sulphites are none of the nine, and
///         are declared all the same (see `label_sheet`).
///         EU: Regulation (EU) 1169/2011, Annex II, fourteen; pine nuts are not among its nuts.
struct Allergen {
    std::string_view name;
    std::string_view us;
    std::string_view eu;
    std::string_view kind_of = {};
};

inline constexpr Allergen allergens[] = {
    {"milk", "milk", "milk"},
    {"egg", "egg", "eggs"},
    {"wheat", "wheat", "cereals containing gluten"},
    {"spelt", "wheat", "cereals containing gluten", "wheat"},
    {"khorasan wheat", "wheat", "cereals containing gluten", "wheat"},
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
    {"pine nut", "tree nuts", ""},
    {"tree nuts", "tree nuts", "nuts"},
    {"peanut", "peanuts", "peanuts"},
    {"soy", "soybeans", "soybeans"},
    {"sesame", "sesame", "sesame"},
    {"fish", "fish", "fish"},
    {"anchovy", "fish", "fish", "fish"},
    {"cod", "fish", "fish", "fish"},
    {"haddock", "fish", "fish", "fish"},
    {"herring", "fish", "fish", "fish"},
    {"mackerel", "fish", "fish", "fish"},
    {"salmon", "fish", "fish", "fish"},
    {"trout", "fish", "fish", "fish"},
    {"tuna", "fish", "fish", "fish"},
    {"crustaceans", "Crustacean shellfish", "crustaceans"},
    {"crab", "Crustacean shellfish", "crustaceans", "crustaceans"},
    {"crayfish", "Crustacean shellfish", "crustaceans", "crustaceans"},
    {"lobster", "Crustacean shellfish", "crustaceans", "crustaceans"},
    {"shrimp", "Crustacean shellfish", "crustaceans", "crustaceans"},
    {"molluscs", "", "molluscs"},
    {"clam", "", "molluscs", "molluscs"},
    {"mussel", "", "molluscs", "molluscs"},
    {"oyster", "", "molluscs", "molluscs"},
    {"scallop", "", "molluscs", "molluscs"},
    {"squid", "", "molluscs", "molluscs"},
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

/// What a kind is one of, else the allergen itself.
[[nodiscard]] constexpr Allergen const& broader(Allergen const& allergen) {
    return allergen.kind_of.empty() ? allergen : *find_allergen(allergen.kind_of);
}

[[nodiscard]] inline std::vector<std::string> allergen_names() {
    std::vector<std::string> names;
    for (Allergen const& allergen : allergens) names.emplace_back(allergen.name);
    return names;
}

/// Some of the allergens, kept in the order of the table above.
using AllergenSet = std::set<Allergen const*>;

} // namespace groat
