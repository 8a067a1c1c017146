/// orders/*.yaml: what a client asks for, and on what terms.
#pragma once

#include <groat/model/order.hpp>
#include <groat/yaml/read_common.hpp>

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

namespace groat {

/// The order of a document; without a number where the document gives none.
[[nodiscard]] Order read_order(Node const& node, Reading const& reading);

// ---------------------------------------------------------------------------------------------------

namespace read_orders_parts {

inline bool is_word(Node const* node, std::string_view word) {
    return node != nullptr && node->is_scalar() && trimmed(node->text) == word;
}

inline bool is_percentage(Node const& node) {
    return node.is_scalar() && trimmed(node.text).ends_with('%');
}

/// A rate of kind `R` on what stands above it, or money.
template <class R>
std::optional<Adjustment> read_adjustment(Node const* node, Reading const& reading) {
    if (node == nullptr) return std::nullopt;
    if (is_percentage(*node)) {
        auto const rate = read_rate<R>(node, reading);
        if (!rate) return std::nullopt;
        return Adjustment(*Surcharge::of(rate->value()));
    }
    auto amount = read_coins(node, "an amount on a quote", false, reading);
    if (!amount) return std::nullopt;
    return Adjustment(*std::move(amount));
}

inline Delivery read_delivery(Node const& node, Reading const& reading) {
    Fields fields(node, "this delivery", reading.found);
    Delivery delivery;
    delivery.origin = fields.where();
    assign(delivery.distance,
           read_quantity(fields.optional("distance"),
                         {"the distance", {Dimension::distance}, "12 km", true}, reading));
    Node const* const charge = fields.optional("charge");
    if (is_word(charge, "at cost")) {
        delivery.charge = DeliveryCharge::at_cost;
    } else if (charge != nullptr && !is_word(charge, "in price")) {
        delivery.charge = DeliveryCharge::amount;
        auto amount = read_scalar(
            charge, "'in price', 'at cost' or an amount", reading,
            [&](std::string_view text) -> Result<Money> {
                auto money = parse_money(text, reading.currency);
                if (!money && money.error().code == "bad-money")
                    return refuse("unknown-word",
                                  fmt::format("'{}' means nothing here", shortened(text, 32)),
                                  "possible are: in price, at cost, or an amount such as 5.00");
                return money;
            });
        assign(delivery.amount, std::move(amount));
    }
    fields.close();
    return delivery;
}

inline OrderLine read_line(Node const& node, Reading const& reading) {
    Fields fields(node, "this line", reading.found);
    OrderLine line;
    line.origin = fields.where();
    line.item = read_reference(fields.required("item", "ginger-lemon sandwich"), reading);
    line.sale_unit = read_reference(fields.optional("as"), reading);
    assign(line.count, read_count(fields.required("count", "4"), "the count", reading));
    line.price = read_price_policy(fields.optional("price"), reading);
    fields.close();
    return line;
}

} // namespace read_orders_parts

inline Order read_order(Node const& node, Reading const& reading) {
    namespace parts = read_orders_parts;
    Fields fields(node, "this order", reading.found);
    Order order;
    Node const* const id = fields.required("order", "2026-041");
    order.origin = id != nullptr ? id->where : fields.where();
    assign(order.id, read_name(id, reading));
    assign(order.client, read_text(fields.optional("client"), reading));
    order.date = read_date(fields.optional("date"), reading);
    order.due = read_date(fields.optional("due"), reading);
    if (order.date && order.due && *order.due < *order.date)
        reading.found.error(fields.place_of("due"), "due-before-date",
                            fmt::format("the order is due on {}, before its own date {}",
                                        iso_date(*order.due), iso_date(*order.date)));
    order.valid = read_days(fields.optional("valid"), reading);
    order.paid_by = read_reference(fields.optional("paid by"), reading);
    Node const* const lines = fields.required("lines", "[{item: ginger-lemon sandwich, count: 4}]");
    for (Node const& each : read_list(lines, "a list of lines", reading)) {
        OrderLine line = parts::read_line(each, reading);
        if (line.item.is_given()) order.lines.push_back(std::move(line));
    }
    if (lines != nullptr && lines->is_sequence() && lines->items.empty())
        reading.found.error(lines->where, "missing-value", "nothing is ordered here",
                            "write a line '- {item: ..., count: 4}' for each item");
    for (Node const& each :
         read_list(fields.optional("quantity breaks"), "a list of counts", reading)) {
        auto count = read_count(&each, "a quantity break", reading);
        if (!count) continue;
        auto& breaks = order.quantity_breaks;
        if (std::find(breaks.begin(), breaks.end(), *count) == breaks.end())
            breaks.push_back(*std::move(count));
        else
            reading.found.warn(
                each.where, "break-twice",
                fmt::format("{} stands twice among the quantity breaks", count->str()),
                "it is shown once; remove one");
    }
    if (Node const* const delivery = fields.optional("delivery"))
        order.delivery = parts::read_delivery(*delivery, reading);
    Node const* const rush = fields.optional("rush");
    if (parts::is_word(rush, "none"))
        order.rush = Surcharge();
    else
        order.rush = parts::read_adjustment<Surcharge>(rush, reading);
    order.discount = parts::read_adjustment<Share>(fields.optional("discount"), reading);
    order.deposit = read_rate<Share>(fields.optional("deposit"), reading);
    order.tax = read_reference(fields.optional("tax"), reading);
    assign(order.notes, read_text(fields.optional("notes"), reading));
    fields.close();
    return order;
}

} // namespace groat
