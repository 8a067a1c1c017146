/// What an order cost in the kitchen against what the books allow for what came out of it: price and usage
/// of ingredients, rate and time of labour. The parts add up to the whole difference exactly.
///
/// The standard is flexed: what the books allow for the good pieces (or the mass) that each run really gave,
/// with the books' losses and yields, in exact parts of a batch. Of a part that has a run of its own in the
/// same order nothing is allowed to those who use it, so that nothing is allowed twice. What a run did not
/// write down counts as the books say. Packing, supplies, energy and overhead are not followed.
#pragma once

#include <groat/cost/engine.hpp>

#include <optional>
#include <vector>

namespace groat {

/// One ingredient (grams as purchased) or role (minutes) of an order. Amounts are costs: above 0 they are
/// unfavourable.
struct CostVariance {
    std::size_t index = 0;     ///< of the ingredient or the role
    bool is_recorded = false;  ///< by any run
    Number allowed;            ///< the standard quantity
    Number taken;              ///< what it really took
    Money standard_price = {}; ///< per gram or minute; of labour with on-cost
    Money cost = {};           ///< what was really paid

    [[nodiscard]] Money standard() const { return standard_price * allowed; }
    /// (actual price - standard price) * actual quantity
    [[nodiscard]] Money by_price() const { return cost - standard_price * taken; }
    /// (actual quantity - standard quantity) * standard price
    [[nodiscard]] Money by_quantity() const { return standard_price * (taken - allowed); }
    [[nodiscard]] Money difference() const { return cost - standard(); }
    /// What a gram or minute really cost; nothing where none was taken.
    [[nodiscard]] std::optional<Money> price() const {
        return taken.is_zero() ? std::nullopt : std::optional(cost / taken);
    }
};

struct OrderVariance {
    std::size_t order = 0;
    std::vector<std::size_t> runs;         ///< in reading order
    std::vector<CostVariance> ingredients; ///< in the order of the book; likewise roles
    std::vector<CostVariance> roles;
    Money standard = {}; ///< of both together
    Money price = {};    ///< of ingredients
    Money usage = {};
    Money rate = {}; ///< of labour
    Money time = {};
    Money actual = {}; ///< standard + price + usage + rate + time
};

/// Those that a run wrote down, the dearest difference first.
[[nodiscard]] std::vector<CostVariance const*> dearest_first(std::vector<CostVariance> const& all);

/// What came out of a run: good pieces, or grams of a formula by mass.
/// Fails    where the run does not say
[[nodiscard]] Result<Number> output_of(Run const& run, Formula const& formula);

/// The variance of an order over all runs that name it.
///
///     allowed grams     what a batch takes as purchased * batches for the good pieces
///     allowed minutes   tasks per piece: for the good pieces, those that may break included; per batch, mix
///                       and load: the begun batches, the whole turns and loads that these take, but no more
///                       than were made; per order: once for each formula
///
/// Fails    (nothing, and why among `found`) where no run names the order, where a run does not say what came out,
///          where an amount cannot be turned into grams, and where a formula cannot be costed
/// Example  allowed 500 g at 8.00 / kg, used 520 g for 4.42  ->  price 0.26, usage 0.16, together 0.42
/// Source   OpenStax, Principles of Accounting, Volume 2, 8.2 and 8.3, for the four formulas
[[nodiscard]] std::optional<OrderVariance> order_variance(Costing const& costing, std::size_t order,
                                                          Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/review/variance.ipp>
#endif
