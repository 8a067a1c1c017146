#pragma once

#include <groat/measure/household.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <utility>

namespace groat {

namespace household_detail {

inline Number const& tolerance() {
    static Number const two_percent(1, 50);
    return two_percent;
}

inline Number size_of(Number const& value) { return value.is_negative() ? -value : value; }

using Counts = std::vector<Number>;

/// The counts next to `ratio` that are whole, or whole and one of `parts`, and below `most`.
inline Counts counts_near(Number const& ratio, Counts const& parts, Number const& most) {
    Counts counts;
    Number const whole(steps(ratio, 1, Tie::down));
    for (Number const& part : parts) counts.push_back(whole + part);
    counts.push_back(whole + 1);
    counts.push_back(whole - 1 + parts.back());
    std::erase_if(counts,
                  [&](Number const& count) { return !count.is_positive() || count >= most; });
    return counts;
}

inline Counts cups_near(Number const& ratio) {
    static Counts const parts = {0, {1, 4}, {1, 3}, {1, 2}, {2, 3}, {3, 4}};
    Counts counts = counts_near(ratio, parts, ratio + 2);
    std::sort(counts.begin(), counts.end(),
              std::greater<Number>()); // the most cups, the fewest spoons
    return counts;
}

/// Eight and more are cups.
inline Counts tbsp_near(Number const& ratio) {
    static Counts const parts = {0, {1, 2}};
    return counts_near(ratio, parts, 8);
}

/// Three and more are tablespoons.
inline Counts tsp_near(Number const& ratio) {
    static Counts const parts = {0, {1, 4}, {1, 2}, {3, 4}};
    Counts counts = counts_near(ratio, parts, 3);
    if (ratio < 1) counts.insert(counts.begin(), Number(1, 8));
    return counts;
}

class Search {
public:
    Search(Number const& amount, KitchenMeasures const& kitchen)
        : amount_(amount), kitchen_(kitchen) {}

    std::optional<HouseholdMeasure> run() {
        if (amount_ * 16 < kitchen_.tsp) return std::nullopt;
        Counts const cups = cups_near(amount_ / kitchen_.cup);
        Counts const spoons = tbsp_near(amount_ / kitchen_.tbsp);
        Counts const small = tsp_near(amount_ / kitchen_.tsp);
        for (auto const& [counts, word] :
             {std::pair(cups, "cup"), std::pair(spoons, "tbsp"), std::pair(small, "tsp")}) {
            for (Number const& count : counts) offer({{count, word}});
            if (best_ && size_of(best_->error) <= tolerance()) return best_;
        }
        for (Number const& count : cups) {
            Number const rest = amount_ - count * kitchen_.cup;
            for (Number const& more : tbsp_near(rest / kitchen_.tbsp))
                if (more < 5) offer({{count, "cup"}, {more, "tbsp"}});
            for (Number const& more : tsp_near(rest / kitchen_.tsp))
                offer({{count, "cup"}, {more, "tsp"}});
        }
        for (Number const& count : spoons)
            if (count < 4 && count.is_whole())
                for (Number const& more :
                     tsp_near((amount_ - count * kitchen_.tbsp) / kitchen_.tsp))
                    offer({{count, "tbsp"}, {more, "tsp"}});
        for (Number const& count : small)
            if (count > Number(1, 8)) offer({{count, "tsp"}, {Number(1, 8), "tsp"}});
        return best_;
    }

private:
    /// Keeps what comes nearer than all before.
    void offer(std::vector<MeasureTerm> terms) {
        HouseholdMeasure measure{std::move(terms), 0, 0};
        for (MeasureTerm const& term : measure.terms)
            measure.amount += term.count * (term.word == "cup"    ? kitchen_.cup
                                            : term.word == "tbsp" ? kitchen_.tbsp
                                                                  : kitchen_.tsp);
        measure.error = measure.amount / amount_ - 1;
        if (!best_ || size_of(measure.error) < size_of(best_->error)) best_ = std::move(measure);
    }

    Number const& amount_;
    KitchenMeasures const& kitchen_;
    std::optional<HouseholdMeasure> best_;
};

} // namespace household_detail

GROAT_INLINE bool HouseholdMeasure::is_rough() const {
    return household_detail::size_of(error) > household_detail::tolerance();
}

GROAT_INLINE KitchenMeasures kitchen_measures(Measures measures) {
    return {find_unit("cup", measures)->factor, find_unit("tbsp", measures)->factor,
            find_unit("tsp", measures)->factor};
}

GROAT_INLINE std::optional<KitchenMeasures> kitchen_measures(std::vector<Density> const& densities,
                                                             Measures measures) {
    if (densities.empty()) return std::nullopt;
    auto const grams = [&](std::string_view word) {
        Unit const* const unit = find_unit(word, measures);
        return unit->factor * density_for(unit, densities).grams_per_millilitre;
    };
    return KitchenMeasures{grams("cup"), grams("tbsp"), grams("tsp")};
}

GROAT_INLINE std::optional<HouseholdMeasure> nearest_measure(Number const& amount,
                                                             KitchenMeasures const& kitchen) {
    return household_detail::Search(amount, kitchen).run();
}

GROAT_INLINE std::string to_text(HouseholdMeasure const& measure) {
    std::string text;
    for (MeasureTerm const& term : measure.terms) {
        if (!text.empty()) text += " + ";
        text += fmt::format("{} {}", mixed(term.count), term.word);
    }
    return text;
}

} // namespace groat
