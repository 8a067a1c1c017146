/// What orders ask of the kitchen: what of own goods is taken from the shelf, what is made of every formula,
/// and what that takes out of the store. Making and buying both go by it, so that they agree. It is what is
/// physically made: a formula of which the rest is kept is made by its batches here, whatever a cost takes of it.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/plan/shelf.hpp>

#include <vector>

namespace groat {

/// What one line of an order asks for, and how much of that is packed already. It points to the order that was given.
struct Ordered {
    Order const* order = nullptr;
    Sale sale;    ///< as ordered
    Number ready; ///< sale units that are taken from the shelf as they are

    [[nodiscard]] Number to_pack() const { return sale.count - ready; }
};

/// Everything is exact. Ingredients and supplies are in the order of the book; what they cost is left out.
struct Kitchen {
    std::vector<Ordered> ordered;           ///< line by line
    Explosion explosion;                    ///< of what is not ready
    std::vector<IngredientUse> ingredients; ///< what is used up, and the offer that costs go by
    std::vector<IngredientUse> supplies;

    /// Whether anything is made of it.
    [[nodiscard]] static bool is_made(FormulaRun const& run) { return run.made.is_positive(); }
};

/// The day on which an order is to be there: when it is due, else its date, else `otherwise`.
[[nodiscard]] Date wanted_on(Order const& order, Date otherwise);

/// Plans what the orders ask together: whatever they share is made once, by the day on which the first of
/// them is wanted. Goods of `shelf` that are fit then are taken first, packed ones by the day of their own
/// order; `shelf` is less these afterwards, and holds what is left of batches that is kept.
///
/// Everything that the orders take must be sound (see `Costing::findings`).
/// Example  6 boxes of 12 wanted, 1 box and 80 shells there, 2 shells a piece  ->  40 shells are made for 60 pieces
[[nodiscard]] Kitchen kitchen_of(Costing const& costing, std::vector<Order const*> const& orders,
                                 OwnGoods& shelf);

/// Warns of own goods that the orders could take, were they not past their day.
void warn_of_past_goods(Kitchen const& kitchen, std::vector<Order const*> const& orders,
                        OwnGoods const& shelf, Costing const& costing, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/kitchen.ipp>
#endif
