/// What a supplier asks for a pack of something, and since when.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/money.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/measure/rate.hpp>
#include <groat/model/yield_source.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// A lower price for each pack from a number of packs on.
struct PriceBreak {
    Number packs;
    Money price;
};

struct Offer {
    Reference item;
    Quantity pack;                   ///< what is in one pack
    Money price;                     ///< of one pack, as listed
    Money freight = {};              ///< for one pack, as listed
    Money deposit = {};              ///< for one pack, as listed
    TaxRate tax_included = {};       ///< recoverable tax that the listed amounts contain
    std::optional<Yield> yield = {}; ///< where it differs from the ingredient's
    YieldSource yield_source = {};
    std::optional<Date> from = {};  ///< in force from this day on; absent: always was
    std::optional<Date> until = {}; ///< the last day it is in force
    std::vector<PriceBreak> breaks = {};
    std::optional<Integer> most_packs = {}; ///< that one order can have of it
    std::string code = {};                  ///< the supplier's own item code
    std::string pack_text = {};             ///< the pack as written, for people
    std::size_t supplier = 0;               ///< index in the book's suppliers
    Span origin = {};

    /// What one pack costs, net of recoverable tax: `(price + freight + deposit) / (1 + tax)`.
    [[nodiscard]] Money pack_cost() const {
        return (price + freight + deposit) / (1 + tax_included.value());
    }
    [[nodiscard]] bool has_ended(Date date) const { return until && *until < date; }
    [[nodiscard]] bool has_begun(Date date) const { return !from || *from <= date; }
};

struct Supplier {
    std::string name;
    std::optional<Money> minimum_order = {};
    std::optional<Money> delivery = {};
    Span origin = {};
};

} // namespace groat
