#pragma once

#include <groat/desk/day.hpp>

#include <groat/base/linkage.hpp>
#include <groat/price/quote.hpp>

#include <algorithm>

namespace groat::desk {

GROAT_INLINE Date day_of(Dates const& dates, std::optional<Date> otherwise) {
    return dates.said.value_or(otherwise.value_or(dates.today));
}

GROAT_INLINE Date day_of_order(Dates const& dates, Order const& order,
                               std::vector<Order const*> const& companions) {
    return day_of(dates, pricing_date(order, companions));
}

GROAT_INLINE Date day_of_order(Dates const& dates, Order const& order, Book const& book) {
    return day_of_order(dates, order, companions_of(order, book));
}

GROAT_INLINE Date day_of_making(Dates const& dates, std::vector<Order const*> const& orders) {
    std::optional<Date> latest;
    for (Order const* const order : orders)
        if (order->date) latest = std::max(latest.value_or(*order->date), *order->date);
    return day_of(dates, latest);
}

} // namespace groat::desk
