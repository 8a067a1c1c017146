/// Money per unit of something: a wage per hour, a tariff per kilowatt-hour, a drive per kilometre.
#pragma once

#include <groat/measure/money.hpp>
#include <groat/measure/quantity.hpp>

#include <utility>

namespace groat {

/// `amount` for each `per`. A default one costs nothing.
struct MoneyRate {
    Money amount;
    Unit const* per = nullptr;

    /// What a quantity of the rate's own dimension costs. Exact.
    /// Throws `std::logic_error` for another dimension.
    /// Example  21.00 USD / h, 20 min  ->  7.00 USD
    [[nodiscard]] Money of(Quantity const& quantity) const {
        if (per == nullptr) return amount * 0;
        if (quantity.dimension != per->dimension)
            throw std::logic_error("a rate of another dimension");
        return amount * (quantity.amount / per->factor);
    }
};

/// A time in minutes as a quantity.
[[nodiscard]] inline Quantity minutes(Number const& count) {
    return {count * 60, Dimension::time, nullptr};
}

} // namespace groat
