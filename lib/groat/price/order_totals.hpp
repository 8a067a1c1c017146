/// From the amounts of an order's lines to what the client pays and what is left of it: discount, minimum order,
/// rush, delivery, tax, deposit, in this order.
///
/// Everything down to `shown` is on the side of tax that the shop shows. Percentages of a discount and of a rush
/// are of the goods, which are all lines together; where what comes back outweighs the rest, of nothing.
#pragma once

#include <groat/model/order.hpp>
#include <groat/model/shop.hpp>
#include <groat/price/fee.hpp>
#include <groat/price/payable.hpp>

#include <optional>
#include <vector>

namespace groat {

/// The same with what is left of it.
struct QuoteTotals : Payable {
    Money revenue; ///< the total less the tax printed
    Money fee;
    Money cost;                   ///< of all lines, and of delivery charged apart
    Money profit;                 ///< revenue less fee and cost
    std::optional<Number> margin; ///< profit / revenue
};

/// What an order's totals are made of.
struct OrderBill {
    std::vector<TaxedAmount> goods;
    TaxRate main;        ///< of what belongs to no line
    Date date;           ///< of the order
    FeeTerms fee;        ///< of one payment
    Money cost;          ///< of everything
    Money delivery_cost; ///< of a delivery that is charged apart
};

/// How many payments a deposit of this share makes: two, or one where all or nothing is paid on ordering.
[[nodiscard]] int payments_with(Share const& deposit);

/// Fails    when a discount is more than the goods, or a delivery at cost can never pay for its fee
[[nodiscard]] Result<QuoteTotals> order_totals(Shop const& shop, Order const& order,
                                               OrderBill const& bill);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/order_totals.ipp>
#endif
