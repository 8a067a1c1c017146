#pragma once

#include <groat/plan/kitchen.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/cost/shares.hpp>

#include <map>
#include <optional>
#include <utility>

namespace groat {

GROAT_INLINE Date wanted_on(Order const& order, Date otherwise) {
    return order.due ? *order.due : order.date.value_or(otherwise);
}

namespace kitchen_detail {

inline Date first_day(std::vector<Order const*> const& orders, Date otherwise) {
    Date first = wanted_on(*orders.front(), otherwise);
    for (Order const* const order : orders) first = std::min(first, wanted_on(*order, otherwise));
    return first;
}

/// Adds up what is used, in the order of the book.
class Uses {
public:
    explicit Uses(Costing const& costing) : costing_(costing) {}

    IngredientUse& of(std::size_t ingredient) {
        IngredientUse& use = uses_[ingredient];
        use.ingredient = ingredient;
        return use;
    }
    void take(Consumption const& use, Number const& driver) {
        Number const amount = ceiling(use.amount * driver);
        if (amount.is_zero()) return;
        IngredientUse& entry = of(use.supply.index);
        entry.bought += amount;
        entry.bought_so += amount;
    }
    [[nodiscard]] std::vector<IngredientUse> all() && {
        std::vector<IngredientUse> result;
        for (auto& [index, use] : uses_) {
            auto const& purchase = costing_.formulary().costs.purchases[index];
            if (!purchase) throw std::logic_error("an ingredient without a price is to be used");
            use.purchase = purchase;
            result.push_back(std::move(use));
        }
        return result;
    }

private:
    Costing const& costing_;
    std::map<std::size_t, IngredientUse> uses_;
};

inline void use_up(Kitchen& kitchen, Costing const& costing) {
    Book const& book = costing.book();
    Uses ingredients(costing);
    Uses supplies(costing);
    for (FormulaRun const& run : kitchen.explosion.runs) {
        if (!Kitchen::is_made(run)) continue;
        for (BatchLine const& line : costing.formulary().with_losses[run.formula].lines) {
            if (line.is_formula) continue;
            IngredientUse& use = ingredients.of(line.index);
            use.usable += line.amount * run.made;
            use.bought += line.bought * run.made;
            if (line.is_bought_so) use.bought_so += line.bought * run.made;
        }
        for (Consumption const& use : book.formulas[run.formula].consumables)
            supplies.take(use, run.driver(use));
    }
    for (Ordered const& ordered : kitchen.ordered)
        if (ordered.sale.unit != nullptr)
            for (Consumption const& use : ordered.sale.unit->packing)
                supplies.take(use, ordered.to_pack());
    kitchen.ingredients = std::move(ingredients).all();
    kitchen.supplies = std::move(supplies).all();
}

} // namespace kitchen_detail

GROAT_INLINE Kitchen kitchen_of(Costing const& costing, std::vector<Order const*> const& orders,
                                OwnGoods& shelf) {
    Book const& book = costing.book();
    Kitchen result;
    std::vector<Sale> to_make;
    for (Order const* const order : orders) {
        Date const day = wanted_on(*order, costing.date());
        for (Sale const& sale : sales_of(*order, book)) {
            Ordered ordered{order, sale, 0};
            if (sale.unit != nullptr) {
                ordered.ready = std::min(sale.count, shelf.packed(sale.formula, sale.unit, day));
                shelf.take(sale.formula, sale.unit, ordered.ready, day);
            }
            Sale rest = sale;
            rest.count = ordered.to_pack();
            if (rest.count.is_positive()) to_make.push_back(rest);
            result.ordered.push_back(std::move(ordered));
        }
    }
    Date const day = kitchen_detail::first_day(orders, costing.date());
    result.explosion =
        explode(book, costing.formulary(), Losses::all, Wholes::all, to_make, shelf.loose(day));
    for (FormulaRun const& run : result.explosion.runs) {
        Formula const& formula = book.formulas[run.formula];
        Number const taken = formula.makes_pieces() ? ceiling(run.from_stock) : run.from_stock;
        shelf.take(run.formula, nullptr, taken, day);
        if (!formula.keeps_leftover) continue;
        std::optional<Date> good_until;
        if (formula.keeping.days) good_until = day + Days(*formula.keeping.days);
        shelf.add(run.formula,
                  leftover_of(run, formula, costing.formulary().with_losses[run.formula]),
                  good_until);
    }
    kitchen_detail::use_up(result, costing);
    return result;
}

GROAT_INLINE void warn_of_past_goods(Kitchen const& kitchen,
                                     std::vector<Order const*> const& orders, OwnGoods const& shelf,
                                     Costing const& costing, Diagnostics& found) {
    Date const day = kitchen_detail::first_day(orders, costing.date());
    auto const warn = [&](std::size_t formula) {
        for (StockItem const* const lot : shelf.past(formula, day))
            found.warn(lot->origin, "stock-past",
                       fmt::format("'{}' in stock is good until {}, and is not taken for what is "
                                   "wanted on {}",
                                   lot->item.name, iso_date(*lot->good_until), iso_date(day)),
                       "take it off the stock, or correct its day");
    };
    for (FormulaRun const& run : kitchen.explosion.runs)
        if (run.demand.is_positive()) warn(run.formula);
}

} // namespace groat
