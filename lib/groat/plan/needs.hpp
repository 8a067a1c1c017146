/// What orders take out of the store, and what of that is on the shelf: the demand side of buying.
#pragma once

#include <groat/cost/engine.hpp>

#include <algorithm>
#include <optional>
#include <vector>

namespace groat {

/// One thing that is needed: grams of food or pieces of a supply, as purchased (AP), at the yield of the
/// offer that quotes go by.
struct Need {
    IngredientUse use;                   ///< what the orders take, and the offer that quotes go by
    Number on_shelf;                     ///< in stock, fit for use on the day
    Number bought;                       ///< in whole packs
    Money cost;                          ///< of those packs, without delivery and deposit
    std::optional<Date> good_until = {}; ///< of what is bought on the day, by its shelf life
    Number used_later;                   ///< by other orders of the books that are due by then
    Number par;                          ///< what is wanted on the shelf always
    std::optional<Date> last_used = {};  ///< the latest day that one of the orders is due

    [[nodiscard]] std::size_t ingredient() const { return use.ingredient; }
    [[nodiscard]] Number const& needed() const { return use.bought; }
    [[nodiscard]] Number to_buy() const;
    /// From the shelf, and what stays there.
    [[nodiscard]] Number taken() const { return needed() - to_buy(); }
    [[nodiscard]] Number stays() const { return on_shelf - taken(); }
    /// Of what is bought.
    [[nodiscard]] Number leftover() const;
    /// What the leftover cost, at the average price paid.
    [[nodiscard]] Money worth() const;
    /// How much beyond the need will be used: by other orders while it is good, or as par, whichever is more, since
    /// what is on the shelf for par is what such orders take.
    [[nodiscard]] Number useful() const { return std::max(used_later, par); }
    /// The part of the leftover that no order of the books uses while it is good; nothing where no shelf
    /// life is stated.
    [[nodiscard]] std::optional<Number> may_spoil() const;
};

/// What the orders take together, batches and mixes shared and own goods used first, less what the stock
/// holds, in the order of the book; what is metered is left out. `bought` and `cost` are zero still.
/// Fails    with every finding that stands in the way of costing; `found` also receives a warning for stock
///          past its day
[[nodiscard]] std::optional<std::vector<Need>> needs_of(Costing const& costing,
                                                        std::vector<Order const*> const& orders,
                                                        Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/needs.ipp>
#endif
