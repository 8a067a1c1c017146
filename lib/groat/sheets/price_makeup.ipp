#pragma once

#include <groat/sheets/price_makeup.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>
#include <groat/sheets/shown_costs.hpp>

#include <variant>

namespace groat {

GROAT_INLINE std::string in_words(Target const& target, Figures const& figures) {
    auto const share = [&](Number const& value) { return figures.share(value); };
    auto const amount = [&](Money const& money) { return figures.amount(money); };
    if (auto const* margin = std::get_if<Margin>(&target))
        return "a margin of " + share(margin->value());
    if (auto const* markup = std::get_if<Markup>(&target))
        return "a markup of " + share(markup->value());
    if (auto const* food = std::get_if<FoodCostShare>(&target))
        return "a food cost of " + share(food->value());
    if (auto const* prime = std::get_if<PrimeCostShare>(&target))
        return "a prime cost of " + share(prime->value());
    if (auto const* contribution = std::get_if<Contribution>(&target))
        return "a contribution of " + amount(contribution->amount) + " each";
    return "a given price of " + amount(std::get<GivenPrice>(target).amount);
}

GROAT_INLINE PriceParts price_parts(QuoteLine const& line, Number const& divisor,
                                    Number const& step, std::optional<Number> const& cost) {
    PriceParts parts;
    parts.cost = line.cost.total().amount() / divisor;
    parts.cost_shown = cost.value_or(round_to(parts.cost, step, Tie::half_even));
    std::array<Number, category_count> exact;
    for (std::size_t i = 0; i < category_count; ++i)
        exact[i] = line.cost.amounts[i].amount() / divisor;
    auto const categories = round_categories(exact, step, parts.cost_shown);
    for (std::size_t i = 0; i < category_count; ++i) {
        if (exact[i].is_zero()) continue;
        parts.categories.push_back(i);
        parts.costs.push_back(exact[i]);
        parts.costs_shown.push_back(categories[i]);
    }
    if (!line.has_price) return parts;
    Number const units = line.count / divisor;
    parts.net = line.net_price.amount() * units;
    parts.net_shown = round_to(parts.net, step, Tie::half_even);
    parts.rest = {line.earned.fee.amount() * units, line.earned.profit.amount() * units};
    parts.rest_shown = round_to_total(parts.rest, step, parts.net_shown - parts.cost_shown);
    return parts;
}

} // namespace groat
