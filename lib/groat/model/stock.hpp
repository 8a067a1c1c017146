/// What is on the shelf, as it was counted: what was bought, and own goods that were made before.
#pragma once

#include <groat/measure/calendar.hpp>
#include <groat/measure/quantity.hpp>
#include <groat/model/reference.hpp>

#include <optional>
#include <vector>

namespace groat {

/// One lot. An item may stand there in several, each with a day of its own.
struct StockItem {
    enum class Of { unknown, bought, made };

    Reference item;                      ///< an ingredient, a supply or a formula
    Reference sale_unit = {};            ///< of own goods that are packed: one of the formula's
    Quantity amount;                     ///< as purchased; of own goods pieces, mass, or packs
    std::optional<Quantity> par = {};    ///< what is wanted on the shelf always; of what is bought
    std::optional<Date> good_until = {}; ///< the last day it can be used
    Of of = Of::unknown;                 ///< set by `link`
    Span origin = {};

    [[nodiscard]] bool is_good_on(Date date) const { return !good_until || *good_until >= date; }
    [[nodiscard]] bool is_made() const { return of == Of::made; }
};

struct Stock {
    std::optional<Date> counted = {}; ///< the day it was counted
    std::vector<StockItem> items = {};
    Span origin = {};
    bool is_in_doubt = false; ///< an error stands in it (see sound_part.hpp)
};

} // namespace groat
