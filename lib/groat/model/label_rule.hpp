/// How a shop writes its labels: choices that the law of its place leaves or prescribes.
#pragma once

#include <groat/measure/rate.hpp>

#include <optional>

namespace groat {

/// Whose list of allergens a label follows, and how it shows them.
///
/// us   the nine of FALCPA and FASTER, in a sentence of their own after the ingredients
/// eu   the fourteen of Regulation (EU) 1169/2011, Annex II, in capitals within the ingredients
enum class AllergenLaw { us, eu };

struct LabelRule {
    AllergenLaw allergens = AllergenLaw::us;
    std::optional<Share> small = {}; ///< up to this share ingredients follow a phrase, in any order
    bool is_grouped = false;         ///< formulas stand with their own ingredients in parentheses
};

} // namespace groat
