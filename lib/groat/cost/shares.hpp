/// Orders that are made together: doughs, loads, preheating and packs are shared, each in proportion to what each
/// order would pay for it alone. So no order, and no category of it, ever costs more together than alone.
#pragma once

#include <groat/cost/explosion.hpp>

#include <map>
#include <vector>

namespace groat {

/// One cost that orders made together have in common: what `of` a formula's ingredients, of its `number`th task or
/// consumable, of its oven loads; the preheating of oven `of`; whole packs of ingredient or supply `of`.
struct PooledCost {
    enum class Kind { ingredients, consumable, task, loads, preheat, packs };
    Kind kind = Kind::ingredients;
    std::size_t of = 0;
    std::size_t number = 0;
};

/// What the sales of one order, or of all of them, make: its explosion.
struct MadeFor {
    std::vector<Sale> sales;
    Explosion run;
};

/// What falls to each order of a set.
///
///     share of a cost = cost of it for all together / sum of what it costs each alone
///
/// which is at most 1: nothing rounded up grows by more than its parts do.
class Shares {
public:
    /// `orders`: the sales of each order of the set.
    Shares(Book const& book, Formulary const& formulary,
           std::vector<std::vector<Sale>> const& orders);

    /// The part of its cost when made alone that an order pays. 1 for what no order takes.
    [[nodiscard]] Number of(PooledCost const& what) const;

private:
    [[nodiscard]] Number cost(PooledCost const& what, MadeFor const& made) const;

    Book const& book_;
    Formulary const& formulary_;
    MadeFor together_;
    std::vector<MadeFor> alone_;
};

/// What of an explosion is charged by whole packs, as bought: grams or pieces.
[[nodiscard]] std::map<std::size_t, Number> whole_pack_uses(Book const& book,
                                                            Formulary const& formulary,
                                                            Explosion const& run,
                                                            std::vector<Sale> const& sales);

/// What the packs cost that so much takes.
[[nodiscard]] Money pack_cost(Purchase const& purchase, Number const& bought);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/shares.ipp>
#endif
