#pragma once

#include <groat/plan/needs.hpp>

#include <groat/base/linkage.hpp>
#include <groat/plan/kitchen.hpp>
#include <groat/price/line_price.hpp>

namespace groat {

GROAT_INLINE Number Need::to_buy() const {
    return on_shelf < needed() ? needed() - on_shelf : Number();
}

GROAT_INLINE Number Need::leftover() const {
    return bought - (bought.is_zero() ? Number() : to_buy());
}

GROAT_INLINE Money Need::worth() const {
    return bought.is_zero() ? cost * Number() : cost * (leftover() / bought);
}

GROAT_INLINE std::optional<Number> Need::may_spoil() const {
    if (!good_until) return std::nullopt;
    Number const left = leftover();
    return used_later < left ? left - used_later : Number();
}

namespace needs_detail {

class Gatherer : quoting_detail::Pricer {
public:
    Gatherer(Costing const& costing, std::vector<Order const*> const& orders, Diagnostics& found)
        : Pricer(costing, found), orders_(orders) {}

    std::optional<std::vector<Need>> result() {
        std::size_t const errors = found_.errors_met();
        for (Order const* order : orders_) can_cost_each(sales_of(*order, book_), *order);
        OwnGoods goods(book_, found_);
        if (found_.errors_met() != errors) return std::nullopt;
        Kitchen const kitchen = kitchen_of(costing_, orders_, goods);
        warn_of_past_goods(kitchen, orders_, goods, costing_, found_);
        add_needs(kitchen);
        take_from_shelf();
        look_ahead(goods);
        if (found_.errors_met() != errors) return std::nullopt;
        return std::move(needs_);
    }

private:
    /// Ingredients and supplies alike.
    static std::vector<IngredientUse> uses_of(Kitchen const& kitchen) {
        std::vector<IngredientUse> uses = kitchen.ingredients;
        uses.insert(uses.end(), kitchen.supplies.begin(), kitchen.supplies.end());
        return uses;
    }

    void add_needs(Kitchen const& kitchen) {
        need_of_.assign(book_.ingredients.size(), unresolved);
        for (IngredientUse const& use : uses_of(kitchen)) {
            if (book_.ingredients[use.ingredient].is_metered || use.bought.is_zero()) continue;
            Need need;
            need.use = use;
            need.cost = zero();
            need_of_[use.ingredient] = needs_.size();
            needs_.push_back(std::move(need));
        }
    }

    void take_from_shelf() {
        for (StockItem const& item : book_.stock.items) {
            if (!item.item.is_resolved() || item.is_made()) continue;
            auto const amount = amount_of(item, book_);
            if (!amount) {
                found_.error(item.origin, amount.error());
                continue;
            }
            auto const par = par_of(item, book_);
            if (!par) found_.error(item.origin, par.error());
            std::size_t const need = need_of_[item.item.index];
            if (need == unresolved) continue;
            if (par) needs_[need].par += *par;
            if (!item.is_good_on(costing_.date())) {
                found_.warn(item.origin, "stock-past",
                            fmt::format("'{}' in stock was good until {}, and is not counted on",
                                        item.item.name, iso_date(*item.good_until)),
                            "take it off the stock, or correct its day");
                continue;
            }
            needs_[need].on_shelf += *amount;
        }
    }

    /// What other orders of the books, due after the day, will take of what is left over: each made for
    /// itself, in the order in which they are due, of the own goods that are still there.
    void look_ahead(OwnGoods& goods) {
        for (Need& need : needs_)
            if (auto const days = book_.ingredients[need.ingredient()].keeping.days)
                need.good_until = costing_.date() + Days(*days);
        std::vector<Order const*> later;
        for (Order const& order : book_.orders) {
            auto const due = order.due ? order.due : order.date;
            if (due && *due >= costing_.date() && can_be_costed(order)) later.push_back(&order);
        }
        auto const wanted = [&](Order const* order) { return wanted_on(*order, costing_.date()); };
        std::stable_sort(later.begin(), later.end(),
                         [&](Order const* a, Order const* b) { return wanted(a) < wanted(b); });
        for (Order const* const order : later) {
            Date const due = wanted(order);
            bool const is_bought_for =
                std::any_of(orders_.begin(), orders_.end(),
                            [&](Order const* each) { return each->id == order->id; });
            OwnGoods none;
            for (IngredientUse const& use :
                 uses_of(kitchen_of(costing_, {order}, is_bought_for ? none : goods))) {
                std::size_t const index = need_of_[use.ingredient];
                if (index == unresolved) continue;
                Need& need = needs_[index];
                if (is_bought_for)
                    need.last_used = std::max(need.last_used.value_or(due), due);
                else if (!need.good_until || due <= *need.good_until)
                    need.used_later += use.bought;
            }
        }
    }

    [[nodiscard]] bool can_be_costed(Order const& order) const {
        Diagnostics others;
        for (Sale const& sale : sales_of(order, book_))
            others.add(costing_.findings(sale.formula, sale.unit));
        return !others.has_errors();
    }

    [[nodiscard]] Money zero() const { return {0, shop_.currency}; }

    std::vector<Order const*> const& orders_;
    std::vector<Need> needs_;
    std::vector<std::size_t> need_of_; ///< by ingredient
};

} // namespace needs_detail

GROAT_INLINE std::optional<std::vector<Need>> needs_of(Costing const& costing,
                                                       std::vector<Order const*> const& orders,
                                                       Diagnostics& found) {
    return needs_detail::Gatherer(costing, orders, found).result();
}

} // namespace groat
