/// From a cost and a target to the price, and from a price to what it really earns. Everything is net of
/// tax, per sale unit, in the currency of the cost, and exact: a price solved for a target returns that
/// target exactly.
#pragma once

#include <groat/model/policy.hpp>
#include <groat/price/fee.hpp>

#include <optional>
#include <string>

namespace groat {

/// All that a price has to carry, for one sale unit.
struct Burden {
    Money cost;        ///< everything
    Money ingredients; ///< part of `cost`
    Money prime;       ///< part of `cost`: ingredients and labour
    Money variable;    ///< part of `cost`: what would not be spent without this sale
    FeeTerms fee;      ///< `fixed` is this unit's share of it
    TaxRate tax;       ///< on the price; matters since the fee is taken of price and tax together
};

/// The net selling price that leaves `margin` of itself after cost and fee.
///
///     price = (cost + fixed fee) / (1 - margin - fee share * (1 + tax))
///
/// Fails    when margin and fee together leave nothing of the price
/// Example  cost 3.00 EUR, margin 70 %, no fee  ->  10.00 EUR   (markup 70 % would be 5.10 EUR)
[[nodiscard]] Result<Money> price_for(Margin const& margin, Burden const& burden);

/// The net selling price that leaves `markup` of cost and fee after both. The fee is a cost like any other, so
/// that a markup is always the margin `markup / (1 + markup)`.
///
///     price = (1 + markup) * (cost + fixed fee) / (1 - (1 + markup) * fee share * (1 + tax))
///
/// Fails    when the fee, marked up as well, leaves nothing of the price
/// Example  cost 0.35 USD, markup 30 %, no fee  ->  0.455 USD
[[nodiscard]] Result<Money> price_for(Markup const& markup, Burden const& burden);

/// The net selling price of which the ingredients are `share`: `ingredients / share`. No fee enters.
/// Example  ingredients 1.50 USD, food cost 35 %  ->  4.2857… USD
[[nodiscard]] Result<Money> price_for(FoodCostShare const& share, Burden const& burden);

/// The net selling price of which ingredients and labour are `share`: `(ingredients + labour) / share`. No fee
/// enters.
/// Example  ingredients 1.50 USD, labour 1.80 USD, prime cost 60 %  ->  5.50 USD
[[nodiscard]] Result<Money> price_for(PrimeCostShare const& share, Burden const& burden);

/// The net selling price that leaves a set amount after variable cost and fee.
///
///     price = (variable cost + fixed fee + contribution) / (1 - fee share * (1 + tax))
[[nodiscard]] Result<Money> price_for(Contribution const& contribution, Burden const& burden);

/// What a net price really earns. Shares are parts of 1 and may be negative; one is absent where it would
/// divide by nothing.
struct Earned {
    Money fee;                        ///< on price and tax
    Money profit;                     ///< price less cost and fee
    Money contribution;               ///< price less variable cost and fee
    std::optional<Number> margin;     ///< profit / price
    std::optional<Number> markup;     ///< profit / (cost + fee)
    std::optional<Number> food_cost;  ///< ingredients / price
    std::optional<Number> prime_cost; ///< (ingredients + labour) / price
};
[[nodiscard]] Earned earned(Money const& net_price, Burden const& burden);

/// `gross = net * (1 + tax)` and back: `net = gross / (1 + tax)`.
/// Source   HMRC VAT Notice 700, the VAT fraction (from memory)
[[nodiscard]] Money with_tax(Money const& net, TaxRate const& tax);
[[nodiscard]] Money without_tax(Money const& gross, TaxRate const& tax);

namespace price_solution_detail {

/// The part of a net price that is left after the percentage fee.
Number kept(Burden const& burden);

std::string percent(Number const& share);

Refused out_of_reach(std::string what, std::string help);

} // namespace price_solution_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/pricing.ipp>
#endif
