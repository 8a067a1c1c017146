#pragma once

#include <groat/price/pricing.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE Money with_tax(Money const& net, TaxRate const& tax) {
    return net * (1 + tax.value());
}

GROAT_INLINE Money without_tax(Money const& gross, TaxRate const& tax) {
    return gross / (1 + tax.value());
}

namespace price_solution_detail {

GROAT_INLINE Number kept(Burden const& burden) {
    return 1 - burden.fee.share.value() * (1 + burden.tax.value());
}

GROAT_INLINE std::string percent(Number const& share) {
    return fmt::format("{} %", decimal_at_most(share * 100, 2));
}

GROAT_INLINE Refused out_of_reach(std::string what, std::string help) {
    return refuse("target-out-of-reach", std::move(what), std::move(help));
}

inline Refused fee_takes_all(Burden const& burden) {
    return out_of_reach(fmt::format("a fee of {} of price and tax leaves nothing of any price",
                                    percent(burden.fee.share.value())),
                        "correct the fee in shop.yaml");
}

} // namespace price_solution_detail

GROAT_INLINE Result<Money> price_for(Margin const& margin, Burden const& burden) {
    using price_solution_detail::kept, price_solution_detail::out_of_reach,
        price_solution_detail::percent;
    Number const left = kept(burden) - margin.value();
    if (!left.is_positive()) {
        Number const fee = 1 - kept(burden);
        return out_of_reach(
            fmt::format("a margin of {} is out of reach at any price: the fee takes {} of "
                        "the net price, so nothing is left for the cost",
                        percent(margin.value()), percent(fee)),
            fmt::format("aim below {}", percent(kept(burden))));
    }
    return (burden.cost + burden.fee.fixed) / left;
}

GROAT_INLINE Result<Money> price_for(Markup const& markup, Burden const& burden) {
    using price_solution_detail::out_of_reach, price_solution_detail::percent;
    Number const times = 1 + markup.value();
    Number const fee = 1 - price_solution_detail::kept(burden);
    Number const left = 1 - times * fee;
    if (!left.is_positive()) {
        if (fee >= 1) return price_solution_detail::fee_takes_all(burden);
        return out_of_reach(
            fmt::format("a markup of {} is out of reach at any price: the fee takes {} of the net "
                        "price, and is a cost to be marked up as well",
                        percent(markup.value()), percent(fee)),
            fmt::format("aim below {}", percent((1 - fee) / fee)));
    }
    return (burden.cost + burden.fee.fixed) * times / left;
}

GROAT_INLINE Result<Money> price_for(FoodCostShare const& share, Burden const& burden) {
    return burden.ingredients / share.value();
}

GROAT_INLINE Result<Money> price_for(PrimeCostShare const& share, Burden const& burden) {
    return burden.prime / share.value();
}

GROAT_INLINE Result<Money> price_for(Contribution const& contribution, Burden const& burden) {
    Number const left = price_solution_detail::kept(burden);
    if (!left.is_positive()) return price_solution_detail::fee_takes_all(burden);
    return (burden.variable + burden.fee.fixed + contribution.amount) / left;
}

GROAT_INLINE Earned earned(Money const& net_price, Burden const& burden) {
    Earned result;
    result.fee = net_price.is_zero() ? burden.fee.fixed
                                     : fee_on(with_tax(net_price, burden.tax), burden.fee);
    result.profit = net_price - burden.cost - result.fee;
    result.contribution = net_price - burden.variable - result.fee;
    if (!net_price.is_zero()) {
        result.margin = result.profit / net_price;
        result.food_cost = burden.ingredients / net_price;
        result.prime_cost = burden.prime / net_price;
    }
    Money const paid = burden.cost + result.fee;
    if (!paid.is_zero()) result.markup = result.profit / paid;
    return result;
}

} // namespace groat
