/// What a quote holds: the lines priced, the ways in which they were and could be costed, tiers and totals.
#pragma once

#include <groat/price/line_price.hpp>
#include <groat/price/order_totals.hpp>
#include <groat/price/tiers.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// What the lines cost and would be asked for if all of them were costed in one way.
struct CostedWay {
    CostedAs way = CostedAs::alone;
    std::vector<Priced> lines; ///< as those of the quote
    Money cost;                ///< of the order, with delivery charged apart
};

/// A line that is no item, judged as its given price has it.
struct QuoteExtra : Priced {
    FreeLine const* line = nullptr;
    Coins amount; ///< price times count
    std::optional<AfterDiscount> after_discount;
    std::optional<Coins> revenue; ///< as of a line
};

/// All lines together, before what is added below them.
struct GoodsEarned {
    Money net;
    Money profit;
    std::optional<Number> margin; ///< profit / net
    bool is_below_target = false; ///< together, the lines that have a target miss it

    [[nodiscard]] bool loses() const { return profit.is_negative(); }
};

/// It keeps alive what it points to, the order and the book, whatever becomes of the costing.
struct Quote {
    Quote(); // these stand in the half, so that including it costs little
    Quote(Quote const&);
    Quote(Quote&&) noexcept;
    Quote& operator=(Quote const&);
    Quote& operator=(Quote&&) noexcept;
    ~Quote();

    Order const* order = nullptr;
    Date date; ///< prices are those in force on this day
    std::optional<Date> valid_until;
    bool is_validity_cut = false; ///< at the day that the goods are wanted, which it would outlast
    std::optional<std::string> paid_by; ///< the fee that was charged
    OrderCost cost;
    std::vector<QuoteLine> lines;
    std::vector<QuoteExtra> extras; ///< the order's, one for one
    GoodsEarned goods;
    std::optional<GoodsEarned> goods_after_discount; ///< where there is one
    std::vector<Tier>
        tiers; ///< by line, then by count; none where no quantity breaks are asked for
    std::vector<Order const*> companions; ///< made together with it
    std::vector<CostedAs> ways;           ///< by line, how it was costed
    std::vector<CostedWay>
        in_other_ways; ///< alone, together where there are companions, in usual runs
    QuoteTotals totals;
    Kept kept = {};

    /// What all lines of no item cost.
    [[nodiscard]] Money cost_of_extras() const;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/quoted.ipp>
#endif
