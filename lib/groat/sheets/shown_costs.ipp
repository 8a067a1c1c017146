#pragma once

#include <groat/sheets/shown_costs.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>

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

GROAT_INLINE std::vector<ShownCategory> shown_categories(CostByCategory const& cost,
                                                         Number const& divisor, Number const& step,
                                                         Number const& total) {
    using shown_costs_detail::round_what_is;
    constexpr auto used = static_cast<std::size_t>(Category::consumables);
    constexpr auto packed = static_cast<std::size_t>(Category::packaging);
    std::vector<Number> exact;
    for (Money const& amount : cost.amounts) exact.push_back(amount.amount() / divisor);
    std::vector<Number> groups = exact;
    groups[used] += exact[packed];
    groups[packed] = 0;
    std::vector<Number> shown = round_what_is(groups, step, total);
    std::vector<Number> const supplies =
        round_what_is({exact[used], exact[packed]}, step, shown[used]);
    shown[used] = supplies[0];
    shown[packed] = supplies[1];
    std::vector<ShownCategory> result;
    for (std::size_t i = 0; i < category_count; ++i)
        if (!exact[i].is_zero()) result.push_back({all_categories[i], {exact[i], shown[i]}});
    return result;
}

GROAT_INLINE ShownFigure ShownCosts::of(Category category) const {
    for (ShownCategory const& each : categories)
        if (each.category == category) return each.cost;
    return {};
}

GROAT_INLINE ShownFigure ShownCosts::supplies() const {
    ShownFigure const used = of(Category::consumables);
    ShownFigure const packed = of(Category::packaging);
    return {used.exact + packed.exact, used.shown + packed.shown};
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

    costs.categories = shown_categories(cost.total, 1, step, costs.items.shown);

    std::vector<Number> lines;
    for (CostLine const& line : cost.lines) lines.push_back(line.cost.total().amount());
    std::vector<Number> const shown = round_what_is(lines, step, costs.items.shown);
    for (std::size_t i = 0; i < lines.size(); ++i) costs.lines.push_back({lines[i], shown[i]});
    return costs;
}

} // namespace groat
