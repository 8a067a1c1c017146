/// What a delivery costs: the trip, the way, and the time of whoever drives. All of it is cost of the category
/// delivery, the driver's time as well; it takes no overhead by the labour hour.
#pragma once

#include <groat/model/order.hpp>
#include <groat/model/shop.hpp>

namespace groat {

struct DeliveryCost {
    Quantity distance; ///< as driven: twice what was written where that is both ways
    Money flat;        ///< for the trip
    Money way;         ///< for the distance
    Money time;        ///< of the driver, with on-cost

    [[nodiscard]] Money total() const { return flat + way + time; }
};

/// `flat + rate * distance driven + minutes / 60 * wage * (1 + on-cost)`. The distance counts once, or twice
/// where it is said to be both ways; the minutes are all that it takes, there and back.
/// Example  4.00, 0.70 a mile, 12 mi both ways, 40 min at 18.00 an hour and 10 %  ->  4.00 + 16.80 + 13.20
[[nodiscard]] DeliveryCost delivery_cost(Shop const& shop, Delivery const& delivery);

// ---------------------------------------------------------------------------------------------------

inline DeliveryCost delivery_cost(Shop const& shop, Delivery const& delivery) {
    DeliveryCost cost{delivery.distance, shop.delivery_flat, {}, Money(0, shop.currency)};
    if (delivery.is_both_ways) cost.distance.amount *= 2;
    cost.way = shop.delivery_rate.of(cost.distance);
    if (shop.driver.is_resolved() && delivery.minutes.is_positive())
        cost.time = shop.labour_cost(shop.driver, delivery.minutes);
    return cost;
}

} // namespace groat
