/// What the client of an order pays, step by step. Nothing of what it costs, or what is left of it, is in it.
#pragma once

#include <groat/price/tax.hpp>

#include <optional>
#include <vector>

namespace groat {

struct Payable {
    Coins subtotal; ///< of the lines; this and all down to `shown` on the side of tax that is shown
    Coins discount; ///< taken off
    std::optional<Number> discount_share; ///< of the goods, as the order says; absent: an amount
    bool is_discount_cut = false;         ///< at the minimum order, below which it would go
    Coins to_minimum; ///< what goods are raised by that were too few before any discount
    Coins rush;
    std::optional<Number> rush_share; ///< of the goods; absent: an amount
    Coins delivery;                   ///< where it is on a line of its own
    Coins shown;                      ///< all of the above together
    std::vector<TaxClass> taxes;
    std::vector<Coins> tax_of_goods; ///< of each of the goods, part of its class
    Coins tax;
    Coins net;   ///< without tax
    Coins total; ///< what the client pays
    Coins deposit;
    Coins balance;             ///< total less deposit
    std::optional<Coins> cash; ///< total where it is paid in cash, if the shop rounds that
};

} // namespace groat
