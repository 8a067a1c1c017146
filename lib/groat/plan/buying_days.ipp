#pragma once

#include <groat/plan/buying_days.hpp>

#include <groat/base/linkage.hpp>
#include <groat/plan/kitchen.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace buying_days_detail {

/// The days on which orders are wanted, and what the kitchen takes for all that are wanted by then.
struct Wanted {
    Date day;
    Kitchen kitchen;

    [[nodiscard]] Number taken(std::size_t ingredient) const {
        for (auto const* uses : {&kitchen.ingredients, &kitchen.supplies})
            for (IngredientUse const& use : *uses)
                if (use.ingredient == ingredient) return use.bought;
        return {};
    }
};

inline std::vector<Wanted> wanted_days(Costing const& costing, Buying const& buying) {
    auto const day_of = [&](Order const* order) {
        return std::max(wanted_on(*order, buying.date), buying.date);
    };
    std::vector<Date> days;
    for (Order const* const order : buying.orders) days.push_back(day_of(order));
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    std::vector<Wanted> result;
    for (Date const day : days) {
        std::vector<Order const*> by_then;
        for (Order const* const order : buying.orders)
            if (day_of(order) <= day) by_then.push_back(order);
        Diagnostics unheard;
        OwnGoods goods(costing.book(), unheard);
        result.push_back({day, kitchen_of(costing, by_then, goods)});
    }
    return result;
}

/// What is to be bought for each day, of those on which anything is.
inline std::vector<std::pair<Date, Number>> shares(Need const& need,
                                                   std::vector<Wanted> const& wanted) {
    std::vector<std::pair<Date, Number>> result;
    Number covered;
    for (Wanted const& each : wanted) {
        bool const is_last = &each == &wanted.back();
        Number const lacks = each.taken(need.ingredient()) - need.on_shelf;
        Number const by_then = is_last ? need.to_buy() : std::min(need.to_buy(), lacks);
        if (by_then <= covered) continue;
        result.emplace_back(each.day, by_then - covered);
        covered = by_then;
    }
    return result;
}

} // namespace buying_days_detail

GROAT_INLINE std::vector<BuyingDay> buying_days(Costing const& costing, Buying const& buying) {
    std::vector<BuyingDay> result;
    std::vector<buying_days_detail::Wanted> wanted;
    for (std::size_t i = 0; i < buying.needs.size(); ++i) {
        Need const& need = buying.needs[i];
        bool const keeps =
            !need.good_until || !need.last_used || *need.last_used <= *need.good_until;
        if (keeps || need.to_buy().is_zero()) continue;
        if (wanted.empty()) wanted = buying_days_detail::wanted_days(costing, buying);
        Days const life = *need.good_until - buying.date;
        std::vector<BuyingDay> parts;
        Date until = *need.good_until; // of what is bought at once
        for (auto const& [day, amount] : buying_days_detail::shares(need, wanted)) {
            if (parts.empty() || day > until) {
                if (day > until) until = day + life;
                parts.push_back({i, buying.date, day, Number()});
            }
            BuyingDay& part = parts.back();
            part.used_until = day;
            part.from = std::max(buying.date, day - life);
            part.amount += amount;
        }
        if (parts.size() == 1 && parts.front().from == buying.date) continue;
        result.insert(result.end(), parts.begin(), parts.end());
    }
    return result;
}

} // namespace groat
