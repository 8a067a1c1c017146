/// What a client asks for, and on what terms.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/model/costed_as.hpp>
#include <groat/model/policy.hpp>
#include <groat/model/reference.hpp>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace groat {

struct OrderLine {
    Reference item;           ///< a formula
    Reference sale_unit = {}; ///< one of the formula's; not given: its first, else by the piece
    Integer count = 1;        ///< sale units
    std::string counted = {}; ///< "4 dozen", where the count was written in such a unit
    PricePolicy price = {};
    std::optional<CostedAs> costed_as = {}; ///< absent: as the order says
    Span origin = {};
};

/// What a client is charged for besides what is baked here: hire, staff, a deposit; or, below 0, what comes back.
/// It is goods of the order like any other, of a price that is given.
struct FreeLine {
    std::string text;
    Integer count = 1;  ///< below 0 for what comes back
    Money price;        ///< each, on the side of tax that the shop shows; may be below 0
    Money cost = {};    ///< each, without tax
    Reference tax = {}; ///< as of a formula: one of the other rates, or `none`
    std::size_t before =
        0; ///< the line of the order that it stands before; past the last: below them all
    Span origin = {};
};

/// How the drive is paid: within the prices, on a line at what it costs, or on a line at a set amount.
enum class DeliveryCharge { in_price, at_cost, amount };

struct Delivery {
    Quantity distance = {0, Dimension::distance, nullptr};
    DeliveryCharge charge = DeliveryCharge::in_price;
    Money amount = {};
    Span origin = {};
    bool is_both_ways = false; ///< the distance is driven twice
    Number minutes = 0;        ///< of the shop's driver, as written, there and back
    Reference tax = {}; ///< absent: as the shop taxes deliveries; else as `TaxRule::delivery`
};

/// A rate on what stands above it, or an amount.
using Adjustment = std::variant<Surcharge, Money>;

struct Order {
    std::string id;
    std::string client = {};
    std::optional<Date> date = {};
    std::optional<Date> due = {};
    std::optional<Days> valid = {};
    Reference paid_by = {}; ///< `none`: without fee
    std::vector<OrderLine> lines = {};
    std::vector<FreeLine> extras = {};         ///< in the order that they were written in
    std::vector<Integer> quantity_breaks = {}; ///< counts from which a price is to hold
    std::optional<Integer> most_counted =
        {}; ///< up to which the last of them holds; absent: four times it
    std::optional<Delivery> delivery = {};
    std::optional<Adjustment> rush = {}; ///< absent: the shop's rule
    std::optional<Adjustment> discount = {};
    bool is_discount_in_price = false; ///< prices are solved so that what is left meets the targets
    std::optional<Share> deposit = {};
    Reference tax = {}; ///< for the whole order; `none`: no tax
    std::string notes = {};
    std::optional<CostedAs> costed_as = {};   ///< absent: as the shop says, else made together
    std::vector<Reference> made_with = {};    ///< other orders; what one says holds for all of them
    std::vector<std::size_t> companions = {}; ///< set by `link`: all others that are made with it
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)
};

/// The number of a line on paper, where items and free lines stand as they were written: from 1 on.
[[nodiscard]] std::size_t number_of_line(Order const& order, std::size_t line);
[[nodiscard]] std::size_t number_of_extra(Order const& order, std::size_t extra);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/order.ipp>
#endif
