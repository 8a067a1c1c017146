/// What stands on the label of an item: its ingredients in falling order of their weight as used, the
/// allergens in it, what it weighs, and until when it may be eaten. Local law decides what a label must say;
/// this gathers what the books know.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/price/contents.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// One entry of the ingredient statement.
struct LabelPart {
    std::string name;                      ///< the common name: the label's, else the books'
    Number grams;                          ///< as used, for one sale unit
    std::vector<std::string> made_of = {}; ///< of what was bought composed, in its own order
    AllergenSet allergens = {};
    std::vector<LabelPart> parts = {}; ///< of a formula that stands grouped
};

struct Label {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr;
    std::vector<LabelPart> parts; ///< the heaviest first; of equals, in the order of the formulas
    std::size_t small_from = 0;   ///< the first that follows the phrase for small amounts
    Number grams;                 ///< finished weight of the sale unit
    Number pieces;                ///< in it; 0 where it is sold by mass
    Contents contents;
    std::optional<Date> made = {};
    std::optional<Date> use_by = {};
    Kept kept = {}; ///< the book that the sale unit stands in

    [[nodiscard]] Number weight_as_used() const;
    /// The part of that which one of its parts is; nothing where nothing weighs anything.
    [[nodiscard]] std::optional<Number> share_of(LabelPart const& part) const;
};

/// The label of one sale unit of an item (of one piece where `unit` is null).
///
///     weight as used = what goes into the bowls for it, before anything evaporates or is baked off
///     use by         = day made + days kept - 1, the day of making being day one
///
/// With `rule.is_grouped` each formula that the item names in its lines stands as one entry, its own ingredients in
/// parentheses; else all ingredients stand in one list. Entries of the same name are one. Without units of
/// account: no price is needed.
/// Fails    with every finding that stands in the way of weighing it
/// Source   21 CFR 101.4(a)(1) for the order, 101.4(a)(2) for the phrase, 101.4(b)(2) for parentheses;
///          FDA Food Code 2022, 3-501.17, for the day
[[nodiscard]] std::optional<Label> label_of(Costing const& costing, std::size_t formula,
                                            SaleUnit const* unit, LabelRule const& rule,
                                            std::optional<Date> made, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/label.ipp>
#endif
