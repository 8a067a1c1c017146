/// What everything costs per gram, millilitre or piece on a date: for each ingredient and supply the offer that costs go
/// by, chosen once for the whole book, and why that one.
#pragma once

#include <groat/model/book.hpp>

#include <memory>
#include <optional>
#include <vector>

namespace groat {

/// The offer that an ingredient or supply is bought by.
struct Purchase {
    enum class Reason {
        only,
        cheapest,    ///< per usable unit, where nothing was bought
        preferred,   ///< the cheapest of the preferred supplier
        last_bought, ///< what was last bought, at its price on the day
        nearest_pack, ///< of whom it was last bought from the pack nearest to that, which has no price
        held,         ///< in a trial: the one of the books
    };

    std::size_t offer = 0; ///< index in the book
    Money pack_cost;       ///< net of recoverable tax, with freight and the share for delivery
    Money pack_outlay;     ///< net of recoverable tax, with freight and deposit
    Number content;        ///< grams, millilitres or pieces in one pack, as purchased (AP)
    Yield yield;           ///< the offer's, else the ingredient's, else 1
    Money unit_cost;       ///< AP cost of one of these: `pack_cost / content - by_product`
    Money by_product;      ///< per gram: what is cut off and used is worth so much
    Reason reason = Reason::only;
    std::size_t considered = 1;                  ///< offers in force that it was chosen from
    std::optional<std::size_t> last_bought = {}; ///< the offer of the purchase that it goes by
    bool is_instead = false; ///< of the preferred supplier, who has nothing that it could go by

    /// What a usable gram, millilitre or piece costs: AP cost over yield (`1 / yield` is the yield factor).
    [[nodiscard]] Money usable_cost() const { return unit_cost / yield.value(); }
    /// The AP cost before anything comes off: what moves with the price.
    [[nodiscard]] Money as_bought() const { return unit_cost + by_product; }
};

/// For each ingredient of the book its purchase on a date, or why there is none.
struct UnitCosts {
    Date date;
    std::vector<std::shared_ptr<Purchase const>> purchases; ///< by ingredient; null: none
    std::vector<Flaw> problems;                             ///< by ingredient; empty code: none
};

/// Chooses for every ingredient the offer that costs go by, among those in force that are not only compared:
///
///     that of the preferred supplier, of several the cheapest per usable unit
///     else, of the supplier last bought from by then who has any: the same pack, else the nearest content
///     else, where nothing was bought, the cheapest per usable unit
///
/// Of one day the larger outlay is the last purchase. Of equals the first in reading order. Single packs are
/// costed: price breaks belong to buying.
[[nodiscard]] UnitCosts unit_costs(Book const& book, Date date);

/// What to say of a purchase that is made instead of at the preferred supplier.
[[nodiscard]] Flaw instead_of_preferred(Purchase const& purchase, std::size_t ingredient,
                                        Book const& book, Date date);

namespace unit_cost_detail {

Flaw no_price(Book const& book, std::size_t index, Date date);

Result<Purchase> choose(Book const& book, std::size_t index, Date date);

} // namespace unit_cost_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/cost/unit_cost.ipp>
#endif
