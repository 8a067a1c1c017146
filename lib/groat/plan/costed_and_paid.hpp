/// What the goods of some orders were costed at, and what is paid for buying them: the same things twice, and
/// step by step why the two are not the same. The steps add up exactly.
#pragma once

#include <groat/plan/buying.hpp>
#include <groat/price/quoted.hpp>

#include <optional>
#include <vector>

namespace groat {

/// Why one pays more, or less, than the orders were costed at.
///
/// prices      the books' prices of the day of buying instead of those of the orders
/// whole_packs what orders are charged for by the whole pack is bought once, like anything else
/// run         an order is costed made together with others, or in a usual run, and not by itself
/// kept        kept goods are made by the batch and costed by what is taken
/// together    the orders are made together, which each was costed without
/// own_goods   goods of our own are taken from the shelf instead of being made
/// metered     comes from a tap and is on no list
/// shelf       what was bought before is taken from the shelf
/// offers      other offers, breaks and packs than the costs go by
/// left_over   packs beyond need
/// delivery    less what the costs carry of it
/// deposit     comes back, and is in no cost
struct CostStep {
    enum class Kind {
        prices,
        run,
        whole_packs,
        kept,
        together,
        own_goods,
        metered,
        shelf,
        offers,
        left_over,
        delivery,
        deposit
    };
    Kind kind = Kind::prices;
    Money amount; ///< added to what was costed; not 0
};

struct CostedAndPaid {
    Money costed;                ///< ingredients, consumables and packaging of the orders' quotes
    std::vector<CostStep> steps; ///< `costed` and all steps are `paid`
    Money paid;                  ///< all packs, deliveries and deposits
};

/// The way from what the quotes of the orders say to what is paid.
///
///     costed + newer prices + by itself + what is really made (kept, together, own goods) - metered - shelf
///            + to buy * (average price of the packs - unit cost) + left over * average price + delivery + deposit
///
/// Quotes go by the prices of their order's date, as `groat quote` does; where it has none, of the day of
/// buying. Net of recoverable tax. Nothing where an order cannot be costed on its date. Where the quote of one of
/// the orders is at hand, of the day of `costing`, that is what the order was costed at.
[[nodiscard]] std::optional<CostedAndPaid> costed_and_paid(Costing const& costing,
                                                           Buying const& buying,
                                                           Quote const* at_hand = nullptr);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/costed_and_paid.ipp>
#endif
