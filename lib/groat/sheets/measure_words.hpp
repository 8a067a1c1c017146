/// How kitchen measures and whole things are named on a sheet, with what rounding did to them.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/measure/household.hpp>
#include <groat/sheets/figures.hpp>

#include <string>

namespace groat {

/// "2 3/4 cup + 1 tbsp", and how much that is off where it is more than 2 %: "1/8 tsp (12 % too much)".
[[nodiscard]] inline std::string measure_words(HouseholdMeasure const& measure,
                                               Figures const& figures = Figures(Currency())) {
    std::string words = to_text(measure);
    if (!measure.is_rough()) return words;
    bool const is_more = measure.error.is_positive();
    Number const share = is_more ? measure.error : -measure.error;
    return words +
           fmt::format(" ({} too {})", figures.share(share, 1), is_more ? "much" : "little");
}

/// Whole ones of what is counted, with the exact number where that is another: "7 (6.8)".
[[nodiscard]] inline std::string whole_words(Number const& number,
                                             Figures const& figures = Figures(Currency())) {
    Number const whole = ceiling(number);
    std::string words = figures.number(whole);
    if (whole == number) return words;
    std::string const exactly = figures.number(number, 2);
    return words + fmt::format(" ({})", exactly == "0"
                                            ? "under " + figures.fixed(decimal_step(2), 2)
                                            : exactly);
}

} // namespace groat
