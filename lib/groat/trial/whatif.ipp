#pragma once

#include <groat/trial/whatif.hpp>

#include <groat/base/linkage.hpp>
#include <groat/cost/shares.hpp>
#include <groat/price/item_cost.hpp>
#include <groat/price/menu.hpp>
#include <groat/price/quote.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace trying_detail {

inline Standing standing_of(QuoteLine const& line, Book const& book) {
    Standing standing{line, line.title(book), line.count};
    standing.is_tax_contained = book.shop.tax.is_contained;
    standing.wanted = line.wanted;
    if (line.wanted) standing.target = line.price;
    standing.formula = book.formulas[line.formula].name;
    if (line.unit != nullptr) standing.sold_as = line.unit->name;
    return standing;
}

GROAT_INLINE void restore(WhatIfLine& line, Standing const& after) {
    if (after.wanted) {
        line.restoring_net = after.wanted;
        line.restoring = after.target;
        return;
    }
    if (!line.before.earned.margin) return;
    auto const margin = Margin::of(*line.before.earned.margin);
    if (!margin) return;
    if (auto const net = price_for(*margin, line.after.burden)) {
        line.restoring_net = *net;
        line.restoring = to_coins(
            after.is_tax_contained ? with_tax(*net, line.after.burden.tax) : *net, {Tie::up, 0});
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

GROAT_INLINE std::vector<Change> drivers(Costing const& costing, Reach const& reach) {
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

GROAT_INLINE Calculation calculation_of_order(std::string id) {
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

GROAT_INLINE Calculation calculation_of_item(std::string name, std::string unit) {
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

GROAT_INLINE Calculation calculation_of_menu(std::string name) {
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
            static_cast<Priced&>(standing) = line;
            standing.is_tax_contained = menu->is_tax_contained;
            calculated.lines.push_back(std::move(standing));
        }
        calculated.reach = reach_of(costing.book(), sales);
        return calculated;
    };
}

GROAT_INLINE std::optional<WhatIf> what_if(Costing const& costing, std::vector<Change> changes,
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
        line.after.burden = after->lines[i].burden;
        line.after.ask(line.before.price, line.before.is_tax_contained);
        trying_detail::restore(line, after->lines[i]);
        result.lines.push_back(std::move(line));
    }
    return result;
}

GROAT_INLINE std::optional<Sensitivities> sensitivities(Costing const& costing,
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

GROAT_INLINE std::optional<std::vector<PriceLimit>> price_limits(Costing const& costing,
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

GROAT_INLINE std::optional<std::vector<CostSince>> costs_between(LinkedBook const& book, Date from,
                                                                 Date to,
                                                                 Calculation const& calculation,
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
