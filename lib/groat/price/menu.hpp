/// A menu costed: every item by itself as `cost_item` does, judged at its price now, with the price its target
/// takes; sums by category and over the menu; and where sales are stated, the mix and break-even.
/// Whatever is weighted is a quotient of sums over the items.
#pragma once

#include <groat/price/break_even.hpp>
#include <groat/price/line_price.hpp>
#include <groat/price/menu_mix.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat {

/// One item of a menu. All but `cost` is per sale unit.
struct MenuLine
    : Priced { ///< at the price now, else the one its target takes, on the menu's side of tax
    MenuItem const* item = nullptr;
    std::string title;
    QuoteLine target; ///< costed, and priced at its target where it has one
    bool is_price_now = false;
    std::optional<Money> gap; ///< the price now less the wanted one, as shown; below 0: too cheap
    Number labour_minutes;    ///< its own, without what is done once for an order
    Number oven_minutes;
    bool has_run = false; ///< a standard run is stated; else one alone bears what is done once

    /// What sums weigh it by: as often as it was sold, or once where that is not known.
    [[nodiscard]] Number units() const { return item->sold ? Number(*item->sold) : Number(1); }
    [[nodiscard]] bool is_below_target() const { return gap && gap->is_negative(); }
    /// The same, or at a wanted price that misses it.
    [[nodiscard]] bool misses_target() const {
        return is_below_target() || (target.wanted && net_price < *target.wanted);
    }
    /// Whether the wanted price, set on its price point, no longer meets the target it was solved for.
    [[nodiscard]] bool wanted_misses_target() const {
        return target.wanted && target.net_price < *target.wanted;
    }
    /// What it contributes for an hour of its work, and of its oven; absent where it takes none.
    [[nodiscard]] std::optional<Money> per_labour_hour() const;
    [[nodiscard]] std::optional<Money> per_oven_hour() const;
    [[nodiscard]] Money unit_cost(Category category) const {
        return target.cost[category] / target.count;
    }
};

/// Sums over items.
struct MenuSum {
    std::size_t items = 0;
    Number units;
    Money sales; ///< without tax
    CostByCategory cost;
    Money fee;
    Money profit; ///< after the overhead of the books
    Money contribution;
    Number labour_minutes;
    Number oven_minutes;

    /// Parts of the sales, absent where there are none.
    [[nodiscard]] std::optional<Number> food_cost() const;
    [[nodiscard]] std::optional<Number> prime_cost() const;
    [[nodiscard]] std::optional<Number> margin() const;
    /// Absent where no such time is taken.
    [[nodiscard]] std::optional<Money> per_labour_hour() const;
    [[nodiscard]] std::optional<Money> per_oven_hour() const;

    MenuSum& operator+=(MenuSum const& other);
};

/// What the sales of a period leave after its fixed costs, and how many would be enough.
struct MenuBreakEven {
    Money fixed_costs;
    Money overhead; ///< that the books put on these sales by their rates, for comparison
    Money profit;   ///< contribution less fixed costs
    Money tax;      ///< on a profit
    UnitSale average;
    Money wanted_before_tax;
    Result<BreakEven> even; ///< in units of the average sale
    Result<BreakEven> wanted;

    [[nodiscard]] Money profit_after_tax() const { return profit - tax; }
};

/// It keeps alive what it points to, the menu and the book, whatever becomes of the costing.
struct MenuCost {
    Menu const* menu = nullptr;
    Date date; ///< prices are those in force on this day
    bool is_tax_contained = false;
    std::optional<std::string> paid_by;
    std::vector<MenuLine> lines;     ///< in the order of the menu
    std::vector<MenuSum> categories; ///< by category; one more at the end for what is in none
    MenuSum total;
    std::optional<MenuMix> mix; ///< where anything was sold
    std::optional<MenuBreakEven> break_even;
    Kept kept = {};
};

/// Costs and judges a menu.
///
/// A fixed fee is paid once for so many items as the menu says are paid together, else once for a standard
/// run, as `cost_item` has it. A contribution is what the shop's variable categories and the fee leave.
/// Fails    with every finding that stands in the way: formulas that cannot be costed, targets out of
///          reach, an item without price and target. `found` also receives the warnings: prices that lose
///          money, stale prices, categories without items, sales that are all 0.
[[nodiscard]] std::optional<MenuCost> cost_menu(Costing const& costing, Menu const& menu,
                                                Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/menu.ipp>
#endif
