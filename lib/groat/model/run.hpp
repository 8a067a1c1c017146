/// A record of what happened in the kitchen: one formula made once, with what went in and came out as it was
/// weighed, counted and paid. Whatever was not written down is left to the books.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/money_rate.hpp>
#include <groat/model/reference.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// So much of an ingredient as it was bought: before trimming.
struct UsedFood {
    Reference item;
    Quantity amount;
    std::optional<Money> paid = {}; ///< for exactly this amount, net of recoverable tax
};

/// Somebody's time at the bench.
struct WorkedTime {
    Reference role;
    Number minutes;
    std::optional<MoneyRate> paid = {}; ///< the wage, before on-cost
};

struct Run {
    std::string name;
    Reference formula;
    std::optional<Date> date = {};
    Reference order = {}; ///< by its number
    std::optional<Number> batches = {};
    std::optional<Number> in_grams = {};    ///< of all lines, ready to use
    std::optional<Number> dough_grams = {}; ///< portioned; nothing for a formula by mass
    std::optional<Integer> portioned = {};  ///< pieces; likewise
    std::optional<Integer> good = {};       ///< of these, those that can be sold
    std::optional<Number> out_grams = {};   ///< of the good pieces; by mass, of all that came out
    std::vector<UsedFood> used = {};
    std::vector<WorkedTime> worked = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)
};

} // namespace groat
