#pragma once

#include <groat/sheets/price_makeup.hpp>

#include <groat/base/apportion.hpp>
#include <groat/base/linkage.hpp>

#include <array>
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
    parts.cost.exact = line.cost.total().amount() / divisor;
    parts.cost.shown = cost.value_or(round_to(parts.cost.exact, step, Tie::half_even));
    parts.categories = shown_categories(line.cost, divisor, step, parts.cost.shown);
    if (!line.has_price) return parts;
    Number const units = line.count / divisor;
    parts.net.exact = line.net_price.amount() * units;
    parts.net.shown = round_to(parts.net.exact, step, Tie::half_even);
    std::array<Number, 2> const rest{line.earned.fee.amount() * units,
                                     line.earned.profit.amount() * units};
    std::vector<Number> const shown =
        round_to_total(rest, step, parts.net.shown - parts.cost.shown);
    parts.fee = {rest[0], shown[0]};
    parts.profit = {rest[1], shown[1]};
    return parts;
}

} // namespace groat
