/// What is bought: food that goes into formulas, and supplies that are used up but not eaten. The facts
/// here hold whoever sells it; what it costs stands in the price lists.
#pragma once

#include <groat/measure/quantity.hpp>
#include <groat/measure/rate.hpp>
#include <groat/model/allergen.hpp>
#include <groat/model/keeping.hpp>
#include <groat/model/yield_source.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

struct Ingredient {
    enum class Kind {
        food,   ///< stands on the label; costed by mass, as a rule
        supply, ///< boxes, liners, bags: counted, without mass, never on a label
    };

    std::string name;
    Kind kind = Kind::food;
    std::vector<Density> densities = {};   ///< the first one rules where no unit matches
    std::optional<Number> grams_each = {}; ///< the mass of one
    Span grams_each_origin = {};
    std::optional<Yield> yield = {}; ///< usable part of what is bought
    YieldSource yield_source = {};
    bool uses_by_products =
        false; ///< what yield tests cut off and find worth something comes off its cost
    AllergenSet allergens = {};
    std::string label = {}; ///< the common name for a label, where it differs
    std::vector<std::string> made_of =
        {};                        ///< of what is bought composed, in the order of its label
    Keeping keeping = {};          ///< in the store, not in the product
    bool buys_whole_packs = false; ///< an order that uses it pays for whole packs
    bool is_metered = false;       ///< water, gas: it flows, and is on no purchase list
    Reference preferred_supplier = {};
    /// The offer that a trial holds on to, whatever is in force: that of the books that it changes.
    std::optional<std::size_t> held_offer = {};
    Span origin = {};
    bool is_in_doubt = false;         ///< an error stands in it (see sound_part.hpp)
    Dimension base = Dimension::mass; ///< of food: by what it is costed (see base_links.hpp)

    [[nodiscard]] bool is_supply() const { return kind == Kind::supply; }
    /// Whether its amounts are grams, millilitres or pieces.
    [[nodiscard]] Dimension costed_by() const { return is_supply() ? Dimension::count : base; }
};

} // namespace groat
