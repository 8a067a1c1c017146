/// What if: an order, an item or a menu calculated with the books as they are and with the books changed, and
/// what of it moves the cost most. There is one way to calculate, used twice.
#pragma once

#include <groat/cost/reach.hpp>
#include <groat/price/priced.hpp>
#include <groat/trial/change.hpp>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace groat {

/// What is sold, at the price it has: one line of what is looked at. Money is per sale unit, net of tax.
struct Standing : Priced {
    std::string title = {};
    Number units = {}; ///< sale units in all
    std::optional<Money> wanted =
        {}; ///< net price that meets the target; absent where a price is given
    std::optional<Coins> target = {}; ///< that, as shown and on its price point
    bool is_tax_contained = false;    ///< in shown prices
    std::string formula = {};         ///< the name of what is sold
    std::string sold_as = {};         ///< empty by the piece
};

/// An order, an item or a menu calculated.
struct Calculated {
    std::vector<Standing> lines;
    CostByCategory cost; ///< of an order or a menu's sales as a whole, of one sale unit of an item
    Reach reach;         ///< what all of it is made of
};

/// How the thing looked at is calculated; nothing where it cannot be, which is among the findings then.
using Calculation = std::function<std::optional<Calculated>(Costing const&, Diagnostics&)>;

/// Ways to calculate. An order is found by its id, an item and a menu by their names, so that they hold for changed copies of
/// the books; both must be there. `unit` empty: the first way the item is sold.
[[nodiscard]] Calculation calculation_of_order(std::string id);
[[nodiscard]] Calculation calculation_of_item(std::string name, std::string unit);
/// Each item of a menu at the price it has now, as often as it was sold.
[[nodiscard]] Calculation calculation_of_menu(std::string name);

/// One line before and after.
struct WhatIfLine {
    Standing before;
    Priced after; ///< at the price before
    std::optional<Money>
        restoring_net; ///< the net price that restores the target, or where a price was given
                       ///< the margin before
    std::optional<Coins> restoring; ///< that, as shown
};

struct WhatIf {
    std::vector<Change> changes;
    Date date;
    std::vector<WhatIfLine> lines;
    CostByCategory before;
    CostByCategory after;

    [[nodiscard]] Money more(Category category) const { return after[category] - before[category]; }
    [[nodiscard]] Money more() const { return after.total() - before.total(); }
};

/// The same with the changes made, all together. Prices stay as they are; beside them stands the one that
/// would restore the target.
/// Fails    with every finding of calculation before or after
[[nodiscard]] std::optional<WhatIf> what_if(Costing const& costing, std::vector<Change> changes,
                                            Calculation const& calculation, Diagnostics& found);

/// What a driver of cost adds to the whole cost when it rises by a tenth.
struct Sensitivity {
    std::string words; ///< "butter", "wage of baker", "baking loss of rye shell"
    Money more;
};

struct Sensitivities {
    Money cost; ///< as it is
    std::vector<Sensitivity> all;

    [[nodiscard]] Number share_of(Sensitivity const& each) const {
        return cost.is_zero() ? Number() : each.more / cost;
    }
};

/// Every price, wage, tariff and loss that moves the cost, the strongest first; of equals, in the order of the
/// books. Only what the thing is made of is tried.
///
///     more = cost with it 10 % up - cost as it is
///
/// A loss of 10 % becomes 11 %. One that would reach 100 % is left out.
[[nodiscard]] std::optional<Sensitivities> sensitivities(Costing const& costing,
                                                         Calculation const& calculation,
                                                         Diagnostics& found);

/// How dear one ingredient may become before a line misses its target at the price it has.
struct PriceLimit {
    std::string title;
    Money now; ///< per gram or piece as purchased, net, without freight and delivery
    std::optional<Number>
        times; ///< the factor on its price; absent where it does not matter to the line
    std::string formula = {}; ///< as of `Standing`
    std::string sold_as = {};
};

/// The limit for each line that has a target, from how its wanted price rises with the price of the ingredient:
///
///     times = 1 + (net price - wanted price) / (wanted price at twice the price of it - wanted price)
///
/// Exact, since a wanted price rises in a straight line with a price while the offer stays, and a trial holds on
/// to it. That needs a line that shares nothing with others: an item or a menu.
/// Below 1: the target is missed already.
[[nodiscard]] std::optional<std::vector<PriceLimit>> price_limits(Costing const& costing,
                                                                  std::size_t ingredient,
                                                                  Calculation const& calculation,
                                                                  Diagnostics& found);

/// What it costs from a day on.
struct CostSince {
    Date date;
    Money cost;
};

/// The cost on `from` and on each later day up to `to` on which a price list changes or something was bought.
[[nodiscard]] std::optional<std::vector<CostSince>> costs_between(LinkedBook const& book, Date from,
                                                                  Date to,
                                                                  Calculation const& calculation,
                                                                  Diagnostics& found);

namespace trying_detail {

void restore(WhatIfLine& line, Standing const& after);

/// What may be tried a tenth higher.
std::vector<Change> drivers(Costing const& costing, Reach const& reach);

} // namespace trying_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/trial/whatif.ipp>
#endif
