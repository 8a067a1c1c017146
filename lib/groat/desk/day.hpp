/// Which day counts: prices are those in force on it. The day said goes before any other; what has no day of its own
/// goes by today, which is given, not asked of a clock.
#pragma once

#include <groat/model/book.hpp>

#include <optional>
#include <vector>

namespace groat::desk {

struct Dates {
    std::optional<Date> said = {};
    Date today = {};
    std::optional<Date> made =
        {}; ///< the day of making, where it was said: use-by days count from it
};

/// The day said, else `otherwise`, else today.
/// Example  nothing said, an order of 12 December  ->  12 December
[[nodiscard]] Date day_of(Dates const& dates, std::optional<Date> otherwise = {});

/// The day of an order made together with its companions: the day said, else the one that they are priced on (see
/// `pricing_date`), else today.
[[nodiscard]] Date day_of_order(Dates const& dates, Order const& order,
                                std::vector<Order const*> const& companions);
/// The same with the companions that the books say.
[[nodiscard]] Date day_of_order(Dates const& dates, Order const& order, Book const& book);

/// The day of making orders: the day said, else the latest date of one of them, else today.
/// Example  nothing said, orders of 3 and 9 December and one without a date  ->  9 December
[[nodiscard]] Date day_of_making(Dates const& dates, std::vector<Order const*> const& orders);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/day.ipp>
#endif
