#pragma once

#include <groat/price/reprice.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>

#include <algorithm>
#include <utility>

namespace groat {

namespace repricing_detail {

/// Up to so many prices that could rise, and so many choices among them, the search goes on to its end. Beyond,
/// the best set found is taken, and how much better another could be is told.
inline constexpr std::size_t most_candidates = 100;
inline constexpr std::size_t most_choices = 20'000;

/// A price that could rise.
struct Candidate {
    std::size_t line = 0;
    Number rate;  ///< gained for each unit of shown price
    Number price; ///< now
    Number most;  ///< rise, on a price point
    PricePoint point;

    /// The greatest rise to a price point that is no more than `rise`; not above 0 where there is none.
    [[nodiscard]] Number rise_within(Number const& rise, Currency currency) const {
        return price_point_within({price + rise, currency}, point).money().amount() - price;
    }
    /// The least rise to a price point that gains `missing`; more than `most` where none does.
    [[nodiscard]] Number rise_for(Number const& missing, Currency currency) const {
        Number const wanted = price + missing / rate;
        return to_price_point({wanted, currency}, point).money().amount() - price;
    }
};

/// The net part of one unit of a shown price.
inline Number net_part(MenuCost const& cost, MenuLine const& line) {
    return cost.is_tax_contained ? Number(1) / (1 + line.target.burden.tax.value()) : Number(1);
}

inline Number rate_of(MenuCost const& cost, MenuLine const& line, MenuAim const& aim) {
    Number const sold_net = line.units() * net_part(cost, line);
    if (auto const* margin = std::get_if<Margin>(&aim))
        return sold_net * (price_solution_detail::kept(line.target.burden) - margin->value());
    return sold_net * std::get<FoodCostShare>(aim).value();
}

/// What the sums miss at the prices now; 0 or below where the aim is reached.
inline Number missing(MenuCost const& cost, MenuAim const& aim) {
    MenuSum const& all = cost.total;
    if (auto const* margin = std::get_if<Margin>(&aim))
        return (all.sales * margin->value() - all.profit).amount();
    return (all.cost[Category::ingredients] - all.sales * std::get<FoodCostShare>(aim).value())
        .amount();
}

inline std::vector<Candidate> candidates(MenuCost const& cost, MenuAim const& aim,
                                         RepriceLimits const& limits) {
    std::vector<Candidate> found;
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        if (limits.left_alone.count(i) > 0) continue;
        MenuLine const& line = cost.lines[i];
        Candidate each{i, rate_of(cost, line, aim), line.price.money().amount(), 0,
                       line.target.point};
        if (!each.rate.is_positive()) continue;
        each.point.to_nearest = false;
        each.most = each.rise_within(each.price * limits.move.value(), line.price.currency());
        if (each.most.is_positive()) found.push_back(std::move(each));
    }
    std::stable_sort(found.begin(), found.end(),
                     [](Candidate const& a, Candidate const& b) { return a.rate > b.rate; });
    return found;
}

/// Branch and bound over the candidates, those that gain most for a unit of price first.
class Search {
public:
    Search(std::vector<Candidate> const& candidates, std::size_t count, Currency currency)
        : candidates_(candidates), count_(count), currency_(currency) {}

    void run(Number const& missing) {
        start(missing);
        if (candidates_.size() > most_candidates) {
            choices_ = most_choices;
            return;
        }
        most_gain_.assign(candidates_.size() + 1, 0);
        for (std::size_t i = candidates_.size(); i-- > 0;)
            most_gain_[i] =
                std::max(most_gain_[i + 1], Number(candidates_[i].most * candidates_[i].rate));
        choose(0, missing, 0);
    }
    [[nodiscard]] std::vector<Number> const& rises() const { return best_; }
    [[nodiscard]] bool is_exact() const { return choices_ < most_choices; }

    /// What the rise must come to at least, if any number of prices could rise by any amount.
    [[nodiscard]] Number least(std::size_t from, Number missing) const {
        Number change;
        for (std::size_t i = from; i < candidates_.size() && missing.is_positive(); ++i) {
            Candidate const& each = candidates_[i];
            Number const rise = std::min(each.most, Number(missing / each.rate));
            change += rise;
            missing -= rise * each.rate;
        }
        return change;
    }

private:
    /// Those that can gain most, all as far as they go, then each back as far as it may, the dearest first.
    void start(Number missing) {
        std::vector<std::size_t> order(candidates_.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return candidates_[a].most * candidates_[a].rate >
                   candidates_[b].most * candidates_[b].rate;
        });
        order.resize(count_);
        std::sort(order.begin(), order.end());
        best_.assign(candidates_.size(), 0);
        Number gained;
        for (std::size_t const i : order) {
            best_[i] = candidates_[i].most;
            gained += candidates_[i].most * candidates_[i].rate;
        }
        for (auto each = order.rbegin(); each != order.rend(); ++each) {
            Candidate const& candidate = candidates_[*each];
            Number const without = gained - best_[*each] * candidate.rate;
            Number const rise = candidate.rise_for(
                std::max(Number(missing - without), candidate.rate * currency_.minor_unit()),
                currency_);
            if (rise < best_[*each]) best_[*each] = rise;
            gained = without + best_[*each] * candidate.rate;
        }
        best_change_ = 0;
        for (Number const& rise : best_) best_change_ += rise;
        chosen_.assign(candidates_.size(), 0);
    }

    void choose(std::size_t from, Number const& missing, Number const& change) {
        if (!missing.is_positive()) {
            if (change < best_change_) {
                best_change_ = change;
                best_ = chosen_;
            }
            return;
        }
        if (used_ == count_ || from == candidates_.size() || choices_ >= most_choices) return;
        ++choices_;
        if (most_gain_[from] * (count_ - used_) < missing) return;
        if (change + least(from, missing) >= best_change_) return;
        if (used_ + 1 == count_) {
            for (std::size_t i = from; i < candidates_.size(); ++i) {
                Number const rise = candidates_[i].rise_for(missing, currency_);
                if (rise > candidates_[i].most || change + rise >= best_change_) continue;
                best_change_ = change + rise;
                best_ = chosen_;
                best_[i] = rise;
            }
            return;
        }
        Candidate const& each = candidates_[from];
        for (Number rise = each.most; rise.is_positive();
             rise = each.rise_within(rise - currency_.minor_unit(), currency_)) {
            chosen_[from] = rise;
            ++used_;
            choose(from + 1, missing - rise * each.rate, change + rise);
            --used_;
            chosen_[from] = 0;
            if (choices_ >= most_choices) return;
        }
        choose(from + 1, missing, change);
    }

    std::vector<Candidate> const& candidates_;
    std::size_t count_;
    Currency currency_;
    std::vector<Number> best_;      ///< rise of each candidate
    std::vector<Number> chosen_;    ///< so far
    std::vector<Number> most_gain_; ///< of one candidate, from each on
    Number best_change_;
    std::size_t used_ = 0;
    std::size_t choices_ = 0;
};

inline std::optional<Number> figure(MenuSum const& sum, MenuAim const& aim) {
    return std::holds_alternative<Margin>(aim) ? sum.margin() : sum.food_cost();
}

/// The figure after the shown prices rose.
inline std::optional<Number> figure_after(MenuCost const& cost, MenuAim const& aim,
                                          std::vector<PriceRise> const& rises) {
    MenuSum sum = cost.total;
    for (PriceRise const& rise : rises) {
        MenuLine const& line = cost.lines[rise.line];
        sum.sales += rise.change * (net_part(cost, line) * line.units());
        sum.profit += rise.profit;
    }
    return figure(sum, aim);
}

/// The fewest candidates that can gain what is missing; absent where all cannot.
inline std::optional<std::size_t> fewest(std::vector<Candidate> const& candidates, Number missing) {
    std::vector<Number> gains;
    for (Candidate const& each : candidates) gains.push_back(each.most * each.rate);
    std::sort(gains.begin(), gains.end(), std::greater<>());
    std::size_t count = 0;
    while (missing.is_positive() && count < gains.size()) missing -= gains[count++];
    if (missing.is_positive()) return std::nullopt;
    return count;
}

inline PriceRise rise_of(MenuCost const& cost, Candidate const& each, Number const& change) {
    MenuLine const& line = cost.lines[each.line];
    Currency const currency = line.price.currency();
    Money const shown(change, currency);
    Money const more =
        shown * (net_part(cost, line) * price_solution_detail::kept(line.target.burden));
    Money const now = line.earned.contribution;
    bool const earns = now.amount().is_positive();
    return {each.line, to_coins(line.price.money() + shown), shown, more * line.units(),
            line.units() * (earns ? more / (now + more) : Number(1))};
}

/// What may rise, in the order in which it does.
struct Sequence {
    std::vector<Candidate> first; ///< all of these, as far as they may
    std::vector<Candidate> then;  ///< the fewest and least of these
    Number missing;               ///< for the latter
};

inline Sequence in_order(MenuCost const& cost, MenuAim const& aim, RepriceLimits const& limits) {
    Sequence order{{}, candidates(cost, aim, limits), missing(cost, aim)};
    if (!limits.below_first) return order;
    auto const others =
        std::stable_partition(order.then.begin(), order.then.end(), [&](Candidate const& each) {
            return cost.lines[each.line].misses_target();
        });
    std::vector<Candidate> below(order.then.begin(), others);
    if (fewest(below, order.missing)) {
        order.then = std::move(below);
        return order;
    }
    order.then.erase(order.then.begin(), others);
    for (Candidate const& each : below) order.missing -= each.most * each.rate;
    order.first = std::move(below);
    return order;
}

inline Flaw out_of_reach(MenuCost const& cost, MenuAim const& aim, RepriceLimits const& limits,
                         std::vector<PriceRise> const& all) {
    auto const reached = figure_after(cost, aim, all);
    if (!reached)
        return {"target-out-of-reach",
                "nothing of this menu was sold, so no price changes anything",
                "state what was sold"};
    return {"target-out-of-reach",
            fmt::format("with every {}price {} % higher at most, the menu reaches {} % and no more",
                        limits.left_alone.empty() ? "" : "other ",
                        decimal_at_most(limits.move.value() * 100, 2), decimal(*reached * 100, 1)),
            "let prices move further, or aim lower"};
}

} // namespace repricing_detail

GROAT_INLINE Result<Repricing> reprice(MenuCost const& cost, MenuAim const& aim,
                                       RepriceLimits const& limits) {
    Repricing result{aim, limits, repricing_detail::figure(cost.total, aim), {}, {}, {}, {}, {}};
    result.after = result.before;
    if (!repricing_detail::missing(cost, aim).is_positive() && result.before) return result;
    repricing_detail::Sequence const order = repricing_detail::in_order(cost, aim, limits);
    Currency const currency = cost.lines.front().price.currency();
    for (auto const& each : order.first)
        result.rises.push_back(repricing_detail::rise_of(cost, each, each.most));
    auto const count = repricing_detail::fewest(order.then, order.missing);
    if (!count || !result.before) {
        for (auto const& each : order.then)
            result.rises.push_back(repricing_detail::rise_of(cost, each, each.most));
        return Refused(repricing_detail::out_of_reach(cost, aim, limits, result.rises));
    }
    if (std::size_t const needed = order.first.size() + *count;
        limits.at_most && needed > *limits.at_most)
        return refuse("too-few-changes",
                      fmt::format("that takes {} changed prices, and no more than {} may change",
                                  needed, *limits.at_most),
                      limits.below_first ? "allow more, let prices move further, aim lower, or do "
                                           "not take items below target first"
                                         : "allow more, let prices move further, or aim lower");
    repricing_detail::Search search(order.then, *count, currency);
    search.run(order.missing);
    Number first;
    for (auto const& each : order.first) first += each.most;
    for (std::size_t i = 0; i < order.then.size(); ++i)
        if (search.rises()[i].is_positive())
            result.rises.push_back(
                repricing_detail::rise_of(cost, order.then[i], search.rises()[i]));
    std::sort(result.rises.begin(), result.rises.end(),
              [](PriceRise const& a, PriceRise const& b) { return a.line < b.line; });
    for (PriceRise const& rise : result.rises) {
        result.change += rise.change;
        result.profit += rise.profit;
    }
    result.least_change =
        search.is_exact() ? result.change : Money(first + search.least(0, order.missing), currency);
    result.after = repricing_detail::figure_after(cost, aim, result.rises);
    return result;
}

GROAT_INLINE Result<std::set<std::size_t>> lines_named(MenuCost const& cost,
                                                       std::vector<std::string> const& names) {
    std::set<std::size_t> lines;
    std::vector<std::string> titles;
    for (MenuLine const& line : cost.lines) titles.push_back(line.title);
    for (std::string const& name : names) {
        bool is_known = false;
        for (std::size_t i = 0; i < cost.lines.size(); ++i) {
            if (name != titles[i] && name != cost.lines[i].item->item.name) continue;
            lines.insert(i);
            is_known = true;
        }
        if (is_known) continue;
        auto const near = nearest_name(name, titles);
        return refuse("unknown-item",
                      fmt::format("nothing on this menu is called '{}'", shortened(name, 40)),
                      near ? fmt::format("did you mean '{}'?", *near)
                           : fmt::format("the first on it is '{}'", titles.front()));
    }
    return lines;
}

} // namespace groat
