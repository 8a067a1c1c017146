/// What a client asks for, and on what terms.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/model/policy.hpp>
#include <groat/model/reference.hpp>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace groat {

struct OrderLine {
    Reference item;           ///< a formula
    Reference sale_unit = {}; ///< one of the formula's; absent: by the piece, without packing
    Integer count = 1;        ///< sale units
    PricePolicy price = {};
    Span origin = {};
};

/// How the drive is paid: within the prices, on a line at what it costs, or on a line at a set amount.
enum class DeliveryCharge { in_price, at_cost, amount };

struct Delivery {
    Quantity distance = {0, Dimension::distance, nullptr};
    DeliveryCharge charge = DeliveryCharge::in_price;
    Money amount = {};
    Span origin = {};
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
    std::vector<Integer> quantity_breaks = {};
    std::optional<Delivery> delivery = {};
    std::optional<Adjustment> rush = {}; ///< absent: the shop's rule
    std::optional<Adjustment> discount = {};
    std::optional<Share> deposit = {};
    Reference tax = {}; ///< for the whole order; `none`: no tax
    std::string notes = {};
    Span origin = {};
};

} // namespace groat
