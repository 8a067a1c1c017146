/// From orders to the bench: every formula once, after those it uses, in whole pieces, batches and oven
/// loads; what of own goods is taken from stock, what is weighed for each mix, what is taken from the store,
/// whose hands and which ovens for how long. All exact. It is what is made in the kitchen: a cost takes no
/// notice of stock.
#pragma once

#include <groat/cost/engine.hpp>

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

/// So many mixes of so many batches each.
struct MixSize {
    Integer count;
    Number batches;
};

/// What is weighed for one batch, and its baker's percentage where the formula names its base.
struct WorkLine {
    BatchLine batch;
    std::optional<Number> percent;
};

/// One formula as it is made for all that was ordered.
struct Work {
    FormulaRun run;
    std::vector<WorkLine> lines;
    std::vector<MixSize> mixes; ///< none where turns of a mixer mean nothing
    bool is_weighed = true;     ///< else no mass of it is known (see `Batch::unweighed`)
    Number mass_in;             ///< grams of all lines of all batches
    Number mass_out;            ///< of these after all losses of mass
    Number portioned;           ///< pieces that they give; 0 by mass
    Number portion_grams;       ///< scaling weight; 0 by mass
    Number piece_grams;         ///< finished weight; 0 by mass

    /// Pieces, or grams of a formula made by mass, beyond what is wanted.
    [[nodiscard]] Number leftover() const;
    /// Minutes of all its loads, where it has any.
    [[nodiscard]] Number baking(Formula const& formula) const {
        return *run.loads * formula.oven->minutes;
    }
};

/// Somebody's work, or time that needs nobody.
struct WorkTask {
    Task const* task = nullptr;
    std::string where; ///< the formula or sale unit; "each order"
    Number count;      ///< how often

    [[nodiscard]] Number minutes() const { return task->minutes * count; }
};

struct OvenTime {
    std::size_t oven = 0;
    Number loads;
    Number baking;  ///< minutes of all loads
    Number preheat; ///< minutes, once

    [[nodiscard]] Number minutes() const { return baking + preheat; }
};

struct RoleTime {
    std::size_t role = 0;
    Number minutes;
};

/// One line of an order as it is packed.
struct Packed {
    Order const* order = nullptr;
    Sale sale;
    Number ready;                                        ///< of its count, packed already
    std::vector<std::pair<std::size_t, Number>> packing; ///< supply and how many, whole

    [[nodiscard]] Number to_pack() const { return sale.count - ready; }
};

/// Own goods that are taken from stock instead of being made.
struct TakenFromStock {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr; ///< null: loose
    Number wanted;                  ///< whole pieces, grams, or sale units
    Number taken;

    [[nodiscard]] Number to_make() const { return wanted - taken; }
};

struct Production {
    std::vector<Order const*> orders;
    Date date; ///< yields and packs are those of the offers in force on this day
    std::vector<TakenFromStock> taken; ///< packed goods first, then each formula after what uses it
    std::vector<Work> works;           ///< what is made, without what is all taken from stock
    std::vector<WorkTask> tasks; ///< in the same order; then packing; then what each order takes
    std::vector<RoleTime> roles; ///< of those who have something to do
    std::vector<OvenTime> ovens; ///< of those used
    std::vector<Packed> packed;
    std::vector<IngredientUse> ingredients; ///< to take from the store, over all formulas
    std::vector<IngredientUse> supplies;
    Kept kept = {}; ///< the orders, and the book that tasks and sale units stand in
};

/// The mixes of a formula: as many as its cost counts, as equal as whole steps of its batch policy
/// allow, the larger ones first; without a policy, or where the larger would not fit the mixer, all equal.
/// Example  2 1/2 batches by halves, the mixer holds 2  ->  one of 1 1/2 and one of 1
[[nodiscard]] std::vector<MixSize> mixes_of(Formula const& formula, FormulaRun const& run);

/// Whatever the orders share is made together, once.
/// Fails    with every finding that stands in the way; `found` receives warnings as well
[[nodiscard]] std::optional<Production> produce(Costing const& costing,
                                                std::vector<Order const*> const& orders,
                                                Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/production.ipp>
#endif
