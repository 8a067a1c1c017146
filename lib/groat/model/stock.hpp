/// What is on the shelf, as it was counted.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/model/reference.hpp>

#include <optional>
#include <vector>

namespace groat {

struct StockItem {
    Reference item;                      ///< an ingredient or supply
    Quantity amount;                     ///< as purchased
    std::optional<Date> good_until = {}; ///< the last day it can be used
    Span origin = {};

    [[nodiscard]] bool is_good_on(Date date) const { return !good_until || *good_until >= date; }
};

struct Stock {
    std::optional<Date> counted = {}; ///< the day it was counted
    std::vector<StockItem> items = {};
    Span origin = {};
};

} // namespace groat
