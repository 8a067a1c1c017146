/// Weights and volumes as a kitchen without a scale measures them: cups and spoons in the sizes that are
/// sold, of the shop's own measures. What such a measure misses is always known, never hidden.
#pragma once

#include <groat/measure/quantity.hpp>

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace groat {

/// So many of one measure: `2 1/4` of a cup.
struct MeasureTerm {
    Number count;
    std::string_view word; ///< "cup", "tbsp" or "tsp"
};

/// One or two terms that come near an amount.
struct HouseholdMeasure {
    std::vector<MeasureTerm> terms;
    Number amount; ///< what the terms come to
    Number error;  ///< by which share of the wanted amount that is too much; below 0: too little

    /// Whether it misses by more than 2 %, which a reader should be told.
    [[nodiscard]] bool is_rough() const;
};

/// What one cup, tablespoon and teaspoon hold of something: mL, or grams through its density.
struct KitchenMeasures {
    Number cup;
    Number tbsp;
    Number tsp;
};

/// The shop's own, in mL.
[[nodiscard]] KitchenMeasures kitchen_measures(Measures measures);

/// The same in grams of a thing, each by the row of its densities that was stated for that very measure, else
/// by the first; nothing where there is no row.
[[nodiscard]] std::optional<KitchenMeasures> kitchen_measures(std::vector<Density> const& densities,
                                                              Measures measures);

/// The measure for an amount in the unit that `kitchen` is in: one term where one comes within 2 %, of the
/// largest measure that does; else the nearest of two. Cups go by quarters and thirds, tablespoons by halves,
/// teaspoons by quarters, and there is an eighth.
/// Nothing     for less than half of an eighth of a teaspoon
/// Example     281.25 g at 125 g a cup  ->  2 1/4 cup
[[nodiscard]] std::optional<HouseholdMeasure> nearest_measure(Number const& amount,
                                                              KitchenMeasures const& kitchen);

/// "2 1/4 cup + 1 tbsp"
[[nodiscard]] std::string to_text(HouseholdMeasure const& measure);

// ---------------------------------------------------------------------------------------------------

namespace household_search {

inline Number const& tolerance() {
    static Number const two_percent(1, 50);
    return two_percent;
}

inline Number size_of(Number const& value) { return value.is_negative() ? -value : value; }

/// The counts of a measure next to `ratio` of it: whole ones and the parts that are sold.
inline std::vector<Number> counts_near(Number const& ratio, std::vector<Number> const& parts) {
    std::vector<Number> counts;
    Number const whole(steps(ratio, 1, Tie::down));
    for (Number const& part : parts) counts.push_back(whole + part);
    counts.push_back(whole + 1);
    if (whole.is_positive()) counts.push_back(whole - 1 + parts.back());
    std::erase_if(counts, [](Number const& count) { return !count.is_positive(); });
    return counts;
}

inline std::vector<Number> cups_near(Number const& ratio) {
    static std::vector<Number> const parts = {
        0, Number(1, 4), Number(1, 3), Number(1, 2), Number(2, 3), Number(3, 4)};
    return counts_near(ratio, parts);
}

/// Below `most` of them: what would be more is measured in the next larger one.
inline std::vector<Number> tbsp_near(Number const& ratio, Number const& most) {
    static std::vector<Number> const parts = {0, Number(1, 2)};
    std::vector<Number> counts = counts_near(ratio, parts);
    std::erase_if(counts, [&](Number const& count) { return count >= most; });
    return counts;
}

inline std::vector<Number> tsp_near(Number const& ratio, Number const& most) {
    static std::vector<Number> const parts = {0, Number(1, 4), Number(1, 2), Number(3, 4)};
    std::vector<Number> counts = counts_near(ratio, parts);
    std::erase_if(counts, [&](Number const& count) { return count >= most; });
    if (ratio < 1) counts.insert(counts.begin(), Number(1, 8));
    return counts;
}

class Search {
public:
    Search(Number const& amount, KitchenMeasures const& kitchen)
        : amount_(amount),
          kitchen_(kitchen),
          spoons_in_cup_(kitchen.cup / kitchen.tbsp),
          small_in_spoon_(kitchen.tbsp / kitchen.tsp) {}

    std::optional<HouseholdMeasure> run() {
        if (amount_ * 16 < kitchen_.tsp) return std::nullopt;
        for (auto const& single : {of_cups(amount_), of_tbsp(amount_, spoons_in_cup_ / 2),
                                   of_tsp(amount_, small_in_spoon_)}) {
            for (MeasureTerm const& term : single) offer({term});
            if (best_ && size_of(best_->error) <= tolerance()) return best_;
        }
        for (MeasureTerm const& cups : of_cups(amount_)) {
            Number const rest = amount_ - cups.count * kitchen_.cup;
            if (!rest.is_positive()) continue;
            for (MeasureTerm const& term : of_tbsp(rest, spoons_in_cup_ / 4)) offer({cups, term});
            for (MeasureTerm const& term : of_tsp(rest, small_in_spoon_)) offer({cups, term});
        }
        for (MeasureTerm const& spoons : of_tbsp(amount_, spoons_in_cup_ / 2)) {
            Number const rest = amount_ - spoons.count * kitchen_.tbsp;
            if (!rest.is_positive()) continue;
            for (MeasureTerm const& term : of_tsp(rest, small_in_spoon_)) offer({spoons, term});
        }
        return best_;
    }

private:
    static std::vector<MeasureTerm> terms(std::vector<Number> const& counts,
                                          std::string_view word) {
        std::vector<MeasureTerm> result;
        for (Number const& count : counts) result.push_back({count, word});
        return result;
    }
    [[nodiscard]] std::vector<MeasureTerm> of_cups(Number const& amount) const {
        return terms(cups_near(amount / kitchen_.cup), "cup");
    }
    [[nodiscard]] std::vector<MeasureTerm> of_tbsp(Number const& amount, Number const& most) const {
        return terms(tbsp_near(amount / kitchen_.tbsp, most), "tbsp");
    }
    [[nodiscard]] std::vector<MeasureTerm> of_tsp(Number const& amount, Number const& most) const {
        return terms(tsp_near(amount / kitchen_.tsp, most), "tsp");
    }

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
    Number spoons_in_cup_;
    Number small_in_spoon_;
    std::optional<HouseholdMeasure> best_;
};

} // namespace household_search

inline bool HouseholdMeasure::is_rough() const {
    return household_search::size_of(error) > household_search::tolerance();
}

inline KitchenMeasures kitchen_measures(Measures measures) {
    return {find_unit("cup", measures)->factor, find_unit("tbsp", measures)->factor,
            find_unit("tsp", measures)->factor};
}

inline std::optional<KitchenMeasures> kitchen_measures(std::vector<Density> const& densities,
                                                       Measures measures) {
    if (densities.empty()) return std::nullopt;
    auto const grams = [&](std::string_view word) {
        Unit const* const unit = find_unit(word, measures);
        return unit->factor * density_for(unit, densities).grams_per_millilitre;
    };
    return KitchenMeasures{grams("cup"), grams("tbsp"), grams("tsp")};
}

inline std::optional<HouseholdMeasure> nearest_measure(Number const& amount,
                                                       KitchenMeasures const& kitchen) {
    return household_search::Search(amount, kitchen).run();
}

inline std::string to_text(HouseholdMeasure const& measure) {
    std::string text;
    for (MeasureTerm const& term : measure.terms) {
        if (!text.empty()) text += " + ";
        text += fmt::format("{} {}", mixed(term.count), term.word);
    }
    return text;
}

} // namespace groat
