/// The cautions that every sheet carries. They defer to local codes and licensed practice.
#pragma once

#include <groat/model/keeping.hpp>
#include <groat/model/words.hpp>
#include <groat/paper/sheet.hpp>

#include <string>
#include <vector>

namespace groat {

/// "Keep cold, at or below 5 °C (41 °F); eat within 4 days." Empty where nothing is stated.
/// Source  FDA Food Code 2022, 3-501.16(A)(2) for the temperature
[[nodiscard]] std::string keeping_words(Keeping const& keeping,
                                        Words const& words = Words::english());

/// "contains milk, egg", or that nothing stands in the records.
[[nodiscard]] std::string allergen_words(AllergenSet const& set,
                                         Words const& words = Words::english());

inline constexpr auto maker_allergen_caution = english_word("check labels");
inline constexpr auto maker_cold_caution = english_word("cold by law");
inline constexpr auto maker_law_caution =
    "Tax, labelling and wage law are local: this calculates with the rates it is given.";

/// The cautions at the foot of a maker's sheet.
[[nodiscard]] Remarks maker_cautions(bool has_cold);

/// Allergens by the names that the books use.
[[nodiscard]] std::vector<std::string> allergen_names(AllergenSet const& set);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/sheets/cautions.ipp>
#endif
