/// One batch of a formula: what goes into it, ready to use and as bought, how much comes out, and whether the
/// losses of making are counted in that. formulary.hpp calculates it for every formula of the book.
#pragma once

#include <groat/base/number.hpp>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

namespace groat {

/// One line for one batch.
struct BatchLine {
    bool is_formula = false;
    std::size_t index = 0; ///< of the ingredient or formula
    Number
        amount; ///< usable, in what the ingredient is costed by; pieces of a formula that makes pieces, grams
    ///< of others
    Number bought;             ///< of an ingredient, before trimming; 0 for formulas
    bool is_bought_so = false; ///< `bought` is as written, whatever the yield of the offer
    std::optional<Number> grams =
        {}; ///< what it adds to the mass of the batch, where that is known

    /// What of it was paid for and is eaten: of what takes up water, no more than was bought.
    [[nodiscard]] Number eaten() const { return std::min(amount, bought); }
};

/// One formula for one batch. `is_sound` is false where something about it, or about what it uses, is
/// wrong; the other figures mean nothing then.
struct Batch {
    bool is_sound = false;
    std::vector<BatchLine> lines;
    /// The fact that is missing to know what it weighs: of pieces that are only counted. The masses are 0 then.
    std::optional<Flaw> unweighed = {};
    Number mass_in;       ///< grams of all lines
    Number pieces;        ///< portioned per batch; 0 for a formula by mass
    Number mass_out;      ///< grams of a batch after all losses of mass
    Number piece_grams;   ///< finished weight of a piece; 0 for a formula by mass
    Number portion_grams; ///< scaling weight of a piece; 0 for a formula by mass
    Number survival = 1;  ///< part of the started pieces that can be sold
};

/// Whether the losses of making (bowl, baking, breakage) are counted.
enum class Losses { none, all };

} // namespace groat
