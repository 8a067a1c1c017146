/// What a supplier asks for a pack of something, and since when; or what was paid for it.
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
    /// Where it comes from: a price list, or a receipt (see receipt.hpp).
    enum class Kind {
        listed,
        paid,
        stopgap, ///< paid once for want of anything better: history, never in force
    };

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
    Kind kind = Kind::listed;
    bool is_only_compared = false; ///< noted to compare with: never in a cost
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)

    /// An amount as listed, net of recoverable tax.
    [[nodiscard]] Money untaxed(Money const& listed) const {
        return listed / (1 + tax_included.value());
    }
    /// What one pack costs, net of recoverable tax: `(price * (1 + s) + freight) / (1 + tax)`, where `s` is the
    /// supplier's delivery as a share of goods. A deposit comes back, and is no cost.
    [[nodiscard]] Money pack_cost(Number const& delivery_share = {}) const {
        return untaxed(price * (1 + delivery_share) + freight);
    }
    /// What one pack takes out of the till, net of recoverable tax: `(price + freight + deposit) / (1 + tax)`.
    [[nodiscard]] Money pack_outlay() const { return untaxed(price + freight + deposit); }
    [[nodiscard]] bool is_listed() const { return kind == Kind::listed; }
    [[nodiscard]] bool has_ended(Date date) const { return until && *until < date; }
    [[nodiscard]] bool has_begun(Date date) const { return !from || *from <= date; }
};

struct Supplier {
    std::string name;
    std::optional<Money> minimum_order = {};
    std::optional<Money> delivery = {};           ///< of one order
    std::optional<Money> free_delivery_from = {}; ///< goods at list price
    std::optional<Money> usual_order = {};        ///< goods at list price
    bool is_only_compared = false;                ///< whoever it is, nothing is bought there
    Number delivery_share = {};                   ///< `share_of_usual_order`, filled by `link`
    Span origin = {};

    /// The delivery of an order of so many goods, at list price.
    [[nodiscard]] Money delivery_of(Money const& goods) const {
        bool const is_free = free_delivery_from && goods >= *free_delivery_from;
        return delivery && !is_free ? *delivery : Money();
    }
    /// What delivery adds to the price of goods: `delivery / usual order`, both on the same side of tax. 0 where
    /// that order is delivered free, or where none is stated.
    [[nodiscard]] Number share_of_usual_order() const {
        if (!usual_order || !usual_order->amount().is_positive()) return {};
        return delivery_of(*usual_order) / *usual_order;
    }
    /// Whether it asks something for a delivery that is in no cost, since no usual order says how it is shared.
    [[nodiscard]] bool has_delivery_apart() const {
        return delivery && !delivery->is_zero() && !usual_order;
    }
};

} // namespace groat
