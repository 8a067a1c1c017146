/// The cautions that every sheet carries. They defer to local codes and licensed practice.
#pragma once

#include <groat/model/allergen.hpp>
#include <groat/model/keeping.hpp>
#include <groat/paper/sheet.hpp>

#include <optional>
#include <string>

namespace groat {

/// "Keep cold, at or below 5 °C (41 °F); eat within 4 days." Empty where nothing is stated.
/// Source  FDA Food Code 2022, 3-501.16(A)(2) for the temperature
[[nodiscard]] inline std::string keeping_words(Keeping const& keeping) {
    std::string words;
    if (keeping.at) {
        switch (*keeping.at) {
        case KeepAt::room: words = "keep dry at room temperature"; break;
        case KeepAt::cool: words = "keep cool and dry"; break;
        case KeepAt::cold: words = "keep cold, at or below 5 °C (41 °F)"; break;
        case KeepAt::frozen: words = "keep frozen"; break;
        }
    }
    if (keeping.days) {
        if (!words.empty()) words += "; ";
        words += *keeping.days == 1 ? "eat on the day it is made"
                                    : "eat within " + std::to_string(*keeping.days) + " days";
    }
    return words;
}

/// "contains milk, egg", or that nothing stands in the records.
[[nodiscard]] inline std::string allergen_words(AllergenSet const& set) {
    std::string words;
    for (Allergen const* allergen : set) {
        if (!words.empty()) words += ", ";
        words += allergen->name;
    }
    return words.empty() ? "no allergen stands in our records" : "contains " + words;
}

inline constexpr auto client_allergen_caution =
    "Allergens are listed from our records of what we buy, not from a laboratory, and all is made "
    "in one "
    "kitchen where traces can pass over. If anyone who will eat this has an allergy, ask us before "
    "you order.";
inline constexpr auto client_keeping_caution = "What is marked to keep cold spoils out of the "
                                               "cold: collect it cooled and put it away at once.";
inline constexpr auto client_tax_caution = "Tax is reckoned at the rate shown; local law decides.";

inline constexpr auto client_no_tax_caution = "No tax is reckoned here; local law decides.";

inline constexpr auto maker_allergen_caution =
    "Allergens come from the books, not from a laboratory: check the labels of what was bought, "
    "and "
    "cross-contact in the kitchen.";
inline constexpr auto maker_cold_caution =
    "Fillings that need the cold keep at or below 5 °C / 41 °F (FDA Food Code 2022, 3-501.16); "
    "home-kitchen "
    "food law often bars them. Local codes and licensed practice decide.";
inline constexpr auto maker_law_caution =
    "Tax, labelling and wage law are local: this reckons with the rates it is given.";

/// Whether it needs the cold.
[[nodiscard]] inline bool is_kept_cold(Keeping const& keeping) {
    return keeping.at && *keeping.at >= KeepAt::cold;
}

/// The cautions at the foot of a maker's sheet.
[[nodiscard]] inline Remarks maker_cautions(bool has_cold) {
    Remarks cautions{"cautions", "Cautions", {maker_allergen_caution}};
    if (has_cold) cautions.lines.emplace_back(maker_cold_caution);
    cautions.lines.emplace_back(maker_law_caution);
    return cautions;
}

} // namespace groat
