/// What the bank or the card company keeps of what the client pays.
#pragma once

#include <groat/measure/money.hpp>
#include <groat/measure/rate.hpp>

namespace groat {

/// A share of all that is paid, tax included, and a fixed amount each time.
struct FeeTerms {
    FeeRate share = {};
    Money fixed = {};
};

/// The fee on a payment: `share * paid + fixed`; nothing when nothing is paid.
/// Example  2.9 % and 0.30 on 35.78 USD  ->  1.33762 USD
[[nodiscard]] inline Money fee_on(Money const& paid, FeeTerms const& terms) {
    if (paid.is_zero()) return paid;
    return paid * terms.share.value() + terms.fixed;
}

} // namespace groat
