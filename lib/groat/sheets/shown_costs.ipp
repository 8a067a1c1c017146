#pragma once

#include <groat/sheets/shown_costs.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>

#include <algorithm>

namespace groat {

namespace shown_costs_detail {
/// As `round_to_total`, without ever giving a step to what is nothing.
inline std::vector<Number> round_what_is(std::vector<Number> const& figures, Number const& step,
                                         Number const& total) {
    std::vector<Number> some;
    for (Number const& each : figures)
        if (!each.is_zero()) some.push_back(each);
    std::vector<Number> const rounded = round_to_total(some, step, total);
    std::vector<Number> result;
    auto next = rounded.begin();
    for (Number const& each : figures) result.push_back(each.is_zero() ? each : *next++);
    return result;
}

} // namespace shown_costs_detail

GROAT_INLINE std::array<Number, category_count> round_categories(
    std::array<Number, category_count> const& exact, Number const& step, Number const& total) {
    using shown_costs_detail::round_what_is;
    constexpr auto used = static_cast<std::size_t>(Category::consumables);
    constexpr auto packed = static_cast<std::size_t>(Category::packaging);
    std::vector<Number> groups(exact.begin(), exact.end());
    groups[used] += exact[packed];
    groups[packed] = 0;
    groups = round_what_is(groups, step, total);
    std::vector<Number> const supplies =
        round_what_is({exact[used], exact[packed]}, step, groups[used]);
    std::array<Number, category_count> shown;
    std::copy(groups.begin(), groups.end(), shown.begin());
    shown[used] = supplies[0];
    shown[packed] = supplies[1];
    return shown;
}

GROAT_INLINE ShownCosts shown_costs(OrderCost const& cost, Money const& other, Number const& step) {
    using shown_costs_detail::round_what_is;
    ShownCosts costs;
    costs.items.exact = cost.total.total().amount();
    costs.apart.exact = cost.delivery_apart.amount();
    costs.other.exact = other.amount();
    costs.all.exact = costs.items.exact + costs.apart.exact + costs.other.exact;
    costs.all.shown = round_to(costs.all.exact, step, Tie::half_even);
    std::vector<Number> const parts = round_what_is(
        {costs.items.exact, costs.apart.exact, costs.other.exact}, step, costs.all.shown);
    costs.items.shown = parts[0];
    costs.apart.shown = parts[1];
    costs.other.shown = parts[2];

    std::array<Number, category_count> exact;
    for (std::size_t i = 0; i < category_count; ++i) exact[i] = cost.total.amounts[i].amount();
    auto const categories = round_categories(exact, step, costs.items.shown);
    for (std::size_t i = 0; i < category_count; ++i)
        costs.categories[i] = {exact[i], categories[i]};

    std::vector<Number> lines;
    for (CostLine const& line : cost.lines) lines.push_back(line.cost.total().amount());
    std::vector<Number> const shown = round_what_is(lines, step, costs.items.shown);
    for (std::size_t i = 0; i < lines.size(); ++i) costs.lines.push_back({lines[i], shown[i]});
    return costs;
}

} // namespace groat
