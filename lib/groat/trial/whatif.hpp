/// What if: an order, an item or a menu calculated with the books as they are and with the books changed, and
/// what of it moves the cost most. There is one way to calculate, used twice.
#pragma once

#include <groat/cost/reach.hpp>
#include <groat/price/item_cost.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/quote.hpp>
#include <groat/trial/change.hpp>

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

/// What is sold, at the price it has: one line of what is looked at. Money is per sale unit, net of tax.
struct Standing {
    std::string title;
    Number units; ///< sale units in all
    Burden burden;
    Money net_price;
    Coins price;   ///< as shown
    Earned earned; ///< at that price
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
    Burden burden; ///< after
    Earned after;  ///< at the price before
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

// ---------------------------------------------------------------------------------------------------

namespace trying_detail {

inline Standing standing_of(QuoteLine const& line, Book const& book) {
    Standing standing{line.title(book), line.count, line.burden,
                      line.net_price,   line.price, line.earned};
    standing.is_tax_contained = book.shop.tax.is_contained;
    standing.wanted = line.wanted;
    if (line.wanted) standing.target = line.price;
    standing.formula = book.formulas[line.formula].name;
    if (line.unit != nullptr) standing.sold_as = line.unit->name;
    return standing;
}

inline void restore(WhatIfLine& line, Standing const& after) {
    if (after.wanted) {
        line.restoring_net = after.wanted;
        line.restoring = after.target;
        return;
    }
    if (!line.before.earned.margin) return;
    auto const margin = Margin::of(*line.before.earned.margin);
    if (!margin) return;
    if (auto const net = price_for(*margin, line.burden)) {
        line.restoring_net = *net;
        line.restoring =
            to_coins(after.is_tax_contained ? with_tax(*net, line.burden.tax) : *net, {Tie::up, 0});
    }
}

inline std::optional<Calculated> calculate_changed(LinkedBook const& book, Date date,
                                                   std::vector<Change> const& changes,
                                                   Calculation const& calculation,
                                                   Diagnostics& found) {
    LinkedBook const changed = book.with([&](Book& copy) {
        for (Change const& change : changes) apply(change, copy);
    });
    return calculation(Costing(changed, date), found);
}

/// What may be tried a tenth higher.
inline std::vector<Change> drivers(Costing const& costing, Reach const& reach) {
    Book const& book = costing.book();
    Number const up = Number(11) / 10;
    std::vector<Change> all;
    for (std::size_t i = 0; i < book.ingredients.size(); ++i)
        if (reach.bought[i])
            all.push_back({book.ingredients[i].name, scaled_price(costing, i, up)});
    for (std::size_t i = 0; i < book.shop.roles.size(); ++i)
        all.push_back({"wage of " + book.shop.roles[i].name, WageScaled{i, up}});
    for (std::size_t i = 0; i < book.shop.tariffs.size(); ++i)
        all.push_back({"tariff of " + book.shop.tariffs[i].name, TariffScaled{i, up}});
    for (std::size_t i = 0; i < book.formulas.size(); ++i) {
        if (!reach.formulas[i]) continue;
        for (std::size_t k = 0; k < book.formulas[i].losses.size(); ++k) {
            NamedLoss const& loss = book.formulas[i].losses[k];
            if (auto const more = Loss::of(loss.share.value() * up);
                more && !loss.share.value().is_zero())
                all.push_back({fmt::format("{} loss of {}", loss.name, book.formulas[i].name),
                               LossSet{i, k, *more}});
        }
    }
    return all;
}

} // namespace trying_detail

inline Calculation calculation_of_order(std::string id) {
    return [id = std::move(id)](Costing const& costing,
                                Diagnostics& found) -> std::optional<Calculated> {
        Order order = *costing.book().find_order(id);
        order.quantity_breaks.clear(); // they would be costed anew each time, and are not looked at
        auto const result = quote(costing, order, found);
        if (!result) return std::nullopt;
        Calculated calculated{
            {}, result->cost.total, reach_of(costing.book(), sales_of(order, costing.book()))};
        calculated.cost[Category::delivery] += result->cost.delivery_apart;
        for (QuoteLine const& line : result->lines)
            calculated.lines.push_back(trying_detail::standing_of(line, costing.book()));
        return calculated;
    };
}

inline Calculation calculation_of_item(std::string name, std::string unit) {
    return [name = std::move(name), unit = std::move(unit)](
               Costing const& costing, Diagnostics& found) -> std::optional<Calculated> {
        Book const& book = costing.book();
        std::size_t const index = book.formula_index.find(name)->second;
        SaleUnit const* sold = nullptr;
        for (SaleUnit const& each : book.formulas[index].sold_as)
            if (each.name == unit) sold = &each;
        auto const item = cost_item(costing, index, sold, found);
        if (!item) return std::nullopt;
        if (!item->line.has_price) {
            found.error(book.formulas[index].origin, "no-target",
                        fmt::format("nothing says what the price of '{}' is to reach", name),
                        "add 'price: {margin: 40 %}' to shop.yaml or to the formula");
            return std::nullopt;
        }
        Calculated calculated{{trying_detail::standing_of(item->line, book)},
                              item->cost.total,
                              reach_of(book, {{index, item->line.unit}})};
        for (Money& amount : calculated.cost.amounts) amount /= item->line.count;
        return calculated;
    };
}

inline Calculation calculation_of_menu(std::string name) {
    return [name = std::move(name)](Costing const& costing,
                                    Diagnostics& found) -> std::optional<Calculated> {
        auto const menu = cost_menu(costing, *costing.book().find_menu(name), found);
        if (!menu) return std::nullopt;
        Calculated calculated{{}, menu->total.cost, {}};
        std::vector<Sale> sales;
        for (MenuLine const& line : menu->lines) {
            sales.push_back({line.target.formula, line.target.unit});
            Standing standing = trying_detail::standing_of(line.target, costing.book());
            standing.title = line.title;
            standing.units = line.units();
            standing.price = line.price;
            standing.net_price = line.net_price;
            standing.earned = line.earned;
            standing.is_tax_contained = menu->is_tax_contained;
            calculated.lines.push_back(std::move(standing));
        }
        calculated.reach = reach_of(costing.book(), sales);
        return calculated;
    };
}

inline std::optional<WhatIf> what_if(Costing const& costing, std::vector<Change> changes,
                                     Calculation const& calculation, Diagnostics& found) {
    auto const before = calculation(costing, found);
    if (!before) return std::nullopt;
    Diagnostics of_trial; // what was found before needs no saying again
    auto const after = trying_detail::calculate_changed(costing.linked(), costing.date(), changes,
                                                        calculation, of_trial);
    if (!after) {
        found.add(of_trial);
        return std::nullopt;
    }
    WhatIf result{std::move(changes), costing.date(), {}, before->cost, after->cost};
    for (std::size_t i = 0; i < before->lines.size(); ++i) {
        WhatIfLine line;
        line.before = before->lines[i];
        line.burden = after->lines[i].burden;
        line.after = earned(line.before.net_price, line.burden);
        trying_detail::restore(line, after->lines[i]);
        result.lines.push_back(std::move(line));
    }
    return result;
}

inline std::optional<Sensitivities> sensitivities(Costing const& costing,
                                                  Calculation const& calculation,
                                                  Diagnostics& found) {
    auto const now = calculation(costing, found);
    if (!now) return std::nullopt;
    Sensitivities result{now->cost.total(), {}};
    for (Change const& driver : trying_detail::drivers(costing, now->reach)) {
        Diagnostics of_trial;
        auto const then = trying_detail::calculate_changed(costing.linked(), costing.date(),
                                                           {driver}, calculation, of_trial);
        if (!then) continue;
        Money const more = then->cost.total() - result.cost;
        if (!more.is_zero()) result.all.push_back({driver.words, more});
    }
    std::stable_sort(result.all.begin(), result.all.end(),
                     [](Sensitivity const& a, Sensitivity const& b) { return a.more > b.more; });
    return result;
}

inline std::optional<std::vector<PriceLimit>> price_limits(Costing const& costing,
                                                           std::size_t ingredient,
                                                           Calculation const& calculation,
                                                           Diagnostics& found) {
    auto const now = calculation(costing, found);
    if (!now) return std::nullopt;
    Diagnostics of_trial;
    auto const twice = trying_detail::calculate_changed(
        costing.linked(), costing.date(), {{"twice", scaled_price(costing, ingredient, 2)}},
        calculation, of_trial);
    if (!twice) {
        found.add(of_trial);
        return std::nullopt;
    }
    Purchase const& purchase = *costing.formulary().costs.purchases[ingredient];
    Offer const& offer = costing.book().offers[purchase.offer];
    Money const unit = offer.untaxed(offer.price) / purchase.content;
    std::vector<PriceLimit> limits;
    for (std::size_t i = 0; i < now->lines.size(); ++i) {
        Standing const& line = now->lines[i];
        if (!line.wanted || !twice->lines[i].wanted) continue;
        Money const rise = *twice->lines[i].wanted - *line.wanted;
        PriceLimit limit{line.title, unit, {}, line.formula, line.sold_as};
        if (!rise.is_zero()) limit.times = 1 + (line.net_price - *line.wanted) / rise;
        limits.push_back(std::move(limit));
    }
    return limits;
}

inline std::optional<std::vector<CostSince>> costs_between(LinkedBook const& book, Date from,
                                                           Date to, Calculation const& calculation,
                                                           Diagnostics& found) {
    std::vector<Date> days{from};
    for (Offer const& offer : book.book().offers) {
        if (offer.kind == Offer::Kind::stopgap) continue;
        if (offer.from && *offer.from > from && *offer.from <= to) days.push_back(*offer.from);
        if (offer.until && *offer.until >= from && *offer.until < to)
            days.push_back(*offer.until + Days(1));
    }
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    std::vector<CostSince> costs;
    for (Date const day : days) {
        Diagnostics of_day; // the warnings of many days would say the same many times
        auto const then = calculation(Costing(book, day), of_day);
        if (!then) {
            found.add(of_day);
            return std::nullopt;
        }
        costs.push_back({day, then->cost.total()});
    }
    return costs;
}

} // namespace groat
