#pragma once

#include <groat/price/priced.hpp>

#include <groat/base/linkage.hpp>

#include <utility>

namespace groat {

GROAT_INLINE Earning earning(Money net_price, Burden const& burden) {
    Earned by_price = earned(net_price, burden);
    return {std::move(net_price), std::move(by_price)};
}

GROAT_INLINE void Priced::ask(Coins const& asked, bool is_tax_contained) {
    price = asked;
    static_cast<Earning&>(*this) =
        earning(is_tax_contained ? without_tax(asked.money(), burden.tax) : asked.money(), burden);
}

} // namespace groat
