/// A price for one of something, with what it has to carry and what it earns. A line of a quote, of a menu or of a trial,
/// a tier, a line that is no item: all of them ask a price in this one way.
#pragma once

#include <groat/measure/coins.hpp>
#include <groat/price/pricing.hpp>

namespace groat {

/// What a net price earns for one.
struct Earning {
    Money net_price; ///< without tax
    Earned earned;   ///< by `net_price`

    [[nodiscard]] bool loses() const { return earned.profit.is_negative(); }
};

/// What is asked for one.
struct Priced : Earning {
    Burden burden;
    Coins price; ///< as shown: with tax where prices contain it

    /// Asks this price of the burden, which stands already.
    /// Example  a burden of 2.00 net, tax 10 %, 3.30 asked, tax contained  ->  3.00 net, 1.00 profit
    void ask(Coins const& asked, bool is_tax_contained);
};

/// What a net price earns over a burden.
[[nodiscard]] Earning earning(Money net_price, Burden const& burden);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/priced.ipp>
#endif
