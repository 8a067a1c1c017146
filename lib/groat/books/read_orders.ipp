#pragma once

#include <groat/books/read_orders.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>
#include <groat/books/read_common.hpp>
#include <groat/books/scalar_text.hpp>

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>

namespace groat {

namespace read_orders_detail {

inline bool is_word(Node const* node, std::string_view word) {
    return node != nullptr && node->is_scalar() && trimmed(node->text) == word;
}

inline bool is_percentage(Node const& node) {
    return node.is_scalar() && trimmed(node.text).ends_with('%');
}

/// Whether a line is of no item, but says in words what is charged.
inline bool is_free(Node const& node) { return is_told_by(node, "text", "item"); }

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

/// Money or a count that may be below 0, as of what comes back: its size is read by `read`.
template <class Read>
auto read_signed(Node const* node, Read read) -> decltype(read(static_cast<Node const*>(nullptr))) {
    bool const is_below =
        node != nullptr && node->is_scalar() && trimmed(node->text).starts_with('-');
    if (!is_below) return read(node);
    Node size = *node;
    size.text = trimmed(trimmed(node->text).substr(1));
    size.is_verbatim = false; // a finding shows the whole, with its sign
    auto value = read(&size);
    if (value) *value *= -1;
    return value;
}

/// A line of what is no formula; `before` lines of items stand above it.
inline FreeLine read_free_line(Node const& node, std::size_t before, Reading const& reading) {
    Fields<shapes::free_line> fields(node, reading.found);
    FreeLine line;
    line.origin = fields.where();
    line.before = before;
    fields.read_into(line, reading);
    assign(line.count, read_signed(fields.at("count"), [&](Node const* count) {
               return read_count(count, "the count", reading);
           }));
    assign(line.price, read_signed(fields.at("price"), [&](Node const* price) {
               return read_coins(price, "the price of a line", false, reading);
           }));
    fields.close();
    return line;
}

inline std::optional<Adjustment> read_discount(Node const* node, Order& order,
                                               Reading const& reading) {
    if (node == nullptr || !node->is_mapping()) return read_adjustment<Share>(node, reading);
    Fields<shapes::discount> fields(*node, reading.found);
    auto discount = read_rate<Share>(fields.at("share"), reading);
    fields.read_into(order, reading);
    if (discount && order.is_discount_in_price && discount->value() == 1)
        reading.found.error(fields.place_of("share"), "target-out-of-reach",
                            "a discount of 100 % leaves nothing of any price to meet a target with",
                            "leave 'in the price' out: then it is a gift");
    fields.close();
    if (!discount) return std::nullopt;
    return Adjustment(*Surcharge::of(discount->value()));
}

inline OrderLine read_line(Node const& node, Reading const& reading) {
    Fields<shapes::order_line> fields(node, reading.found);
    OrderLine line;
    line.origin = fields.where();
    fields.read_into(line, reading);
    line.counted = counted_in(fields.at("count"), reading);
    fields.close();
    return line;
}

inline void read_starts(Node const* node, Order& order, Reading const& reading) {
    for (Node const& each : read_list(node, "a list of counts", reading)) {
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
}

/// A list of starts, or these with the most for which the last holds.
inline void read_breaks(Node const& node, Order& order, Reading const& reading) {
    if (!node.is_mapping()) return read_starts(&node, order, reading);
    Fields<shapes::quantity_breaks> fields(node, reading.found);
    read_starts(fields.at("starts"), order, reading);
    fields.read_into(order, reading);
    for (Integer const& start : order.quantity_breaks)
        if (order.most_counted && start > *order.most_counted) {
            reading.found.error(fields.at("most")->where, "most-below-start",
                                fmt::format("{} is below the quantity break {}",
                                            order.most_counted->str(), start.str()),
                                "the most is what the last price holds up to");
            order.most_counted.reset();
        }
    fields.close();
}

} // namespace read_orders_detail

GROAT_INLINE bool read_value(Delivery& delivery, Node const& node, KeyShape const&,
                             Reading const& reading) {
    Fields<shapes::delivery> fields(node, reading.found);
    delivery.origin = fields.where();
    fields.read_into(delivery, reading);
    Node const* const charge = fields.at("charge");
    if (read_orders_detail::is_word(charge, "at cost")) {
        delivery.charge = DeliveryCharge::at_cost;
    } else if (charge != nullptr && !read_orders_detail::is_word(charge, "in price")) {
        delivery.charge = DeliveryCharge::amount;
        auto amount = read_scalar(
            charge, "'in price', 'at cost' or an amount", reading,
            [&](std::string_view text) -> Result<Money> {
                auto money = parse_money(text, reading.currency);
                if (!money && money.error().code == Code("bad-money"))
                    return refuse("unknown-word",
                                  fmt::format("'{}' means nothing here", shortened(text, 32)),
                                  "possible are: in price, at cost, or an amount such as 5.00");
                return money;
            });
        assign(delivery.amount, std::move(amount));
    }
    fields.close();
    return true;
}

GROAT_INLINE Order read_order(Node const& node, Reading const& reading) {
    namespace parts = read_orders_detail;
    Fields<shapes::order> fields(node, reading.found);
    Order order;
    order.origin = fields.origin("order");
    fields.read_into(order, reading);
    if (order.date && order.due && *order.due < *order.date)
        reading.found.error(fields.place_of("due"), "due-before-date",
                            fmt::format("the order is due on {}, before its own date {}",
                                        iso_date(*order.due), iso_date(*order.date)));
    Node const* const lines = fields.at("lines");
    for (Node const& each : read_list(lines, "a list of lines", reading)) {
        if (parts::is_free(each)) {
            order.extras.push_back(parts::read_free_line(each, order.lines.size(), reading));
            continue;
        }
        OrderLine line = parts::read_line(each, reading);
        if (line.item.is_given()) order.lines.push_back(std::move(line));
    }
    if (order.lines.empty() && !order.extras.empty() && lines->items.size() == order.extras.size())
        reading.found.error(lines->where, "nothing-made",
                            "an order needs an item that is made here, beside what else is charged",
                            "add a line '- {item: ..., count: 4}'");
    if (lines != nullptr && lines->is_sequence() && lines->items.empty())
        reading.found.error(lines->where, "missing-value", "nothing is ordered here",
                            "write a line '- {item: ..., count: 4}' for each item");
    if (Node const* const breaks = fields.at("quantity breaks"))
        parts::read_breaks(*breaks, order, reading);
    Node const* const rush = fields.at("rush");
    if (parts::is_word(rush, "none"))
        order.rush = Surcharge();
    else
        order.rush = parts::read_adjustment<Surcharge>(rush, reading);
    order.discount = parts::read_discount(fields.at("discount"), order, reading);
    fields.close();
    return order;
}

} // namespace groat
