/// A formula: what goes in, what comes out, what is lost, and what it takes of labour, oven and supplies.
/// A dough, a filling, a glaze and an assembled cookie are all formulas.
#pragma once

#include <groat/measure/quantity.hpp>
#include <groat/model/effort.hpp>
#include <groat/model/keeping.hpp>
#include <groat/model/policy.hpp>

#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace groat {

/// One line: so much of an ingredient, or of another formula.
struct Line {
    enum class Of { unknown, ingredient, formula };

    Reference item;
    Of of = Of::unknown; ///< set by `link`
    std::variant<Quantity, Number>
        amount;                      ///< a quantity, or a share of the base (baker's percentage)
    bool is_as_bought = false;       ///< the quantity is before trimming
    std::optional<Yield> yield = {}; ///< of this line, before all others
    Span origin = {};

    [[nodiscard]] bool is_percentage() const { return std::holds_alternative<Number>(amount); }
};

/// When a loss happens. `pieces` counts pieces that cannot be sold; the others take mass.
enum class LossStage { before_portioning, after_portioning, pieces };

struct NamedLoss {
    std::string name;
    Loss share;
    LossStage stage = LossStage::before_portioning;
};

struct OvenUse {
    Reference oven;
    Number minutes;                    ///< of one load
    Quantity holds;                    ///< one load: pieces, or mass for a formula made by mass
    std::optional<Integer> trays = {}; ///< in one load, where it is told by the tray
};

/// A way an item is sold: a box of 12, a jar of 250 g, a single piece.
struct SaleUnit {
    std::string name;
    Quantity holds; ///< whole pieces, or mass
    std::vector<Consumption> packing = {};
    std::vector<Task> labour = {};
    PricePolicy price = {};
    Span origin = {};
};

struct Formula {
    std::string name;
    std::vector<Line> lines = {};
    std::vector<Reference> percentage_base = {}; ///< `percent of`
    std::optional<Number> total_grams = {};      ///< wanted mass of all lines, with percentages
    std::optional<Quantity> portion = {};        ///< scaling weight, or volume through the density
    std::optional<Quantity> makes = {};          ///< pieces, or mass
    std::vector<Density> densities = {};         ///< of what comes out
    std::vector<NamedLoss> losses = {};
    std::optional<OvenUse> oven = {};
    std::vector<Task> labour = {};
    std::vector<Consumption> consumables = {};
    Number batch_step = 0;                  ///< 0: any part of a batch; 1: whole; 1/2: halves
    std::optional<Number> largest_mix = {}; ///< batches that go into the mixer at once
    bool keeps_leftover = false;
    Keeping keeping = {};
    std::optional<Number> standard_run = {}; ///< pieces, or grams for a formula made by mass
    PricePolicy price = {};
    Reference tax = {};
    std::string label = {};
    std::vector<SaleUnit> sold_as = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)

    /// Whether it comes out in pieces rather than by mass.
    [[nodiscard]] bool makes_pieces() const {
        return portion.has_value() || (makes && makes->is(Dimension::count));
    }
    /// The way it is sold where nobody says which: the first one, or none of them, by the piece. Index in
    /// `sold_as`, or `unresolved`.
    [[nodiscard]] std::size_t usual_way() const { return sold_as.empty() ? unresolved : 0; }
    /// Whether turns of the mixer mean anything for it.
    [[nodiscard]] bool counts_mixes() const {
        return largest_mix || std::any_of(labour.begin(), labour.end(),
                                          [](Task const& task) { return task.per == Per::mix; });
    }
};

} // namespace groat
