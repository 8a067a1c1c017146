#pragma once

#include <groat/sheets/measure_words.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE std::string measure_words(HouseholdMeasure const& measure, Figures const& figures) {
    std::string words = to_text(measure);
    if (!measure.is_rough()) return words;
    bool const is_more = measure.error.is_positive();
    Number const share = is_more ? measure.error : -measure.error;
    return words +
           fmt::format(" ({} too {})", figures.share(share, 1), is_more ? "much" : "little");
}

GROAT_INLINE std::string whole_words(Number const& number, Figures const& figures) {
    Number const whole = ceiling(number);
    std::string words = figures.number(whole);
    if (whole == number) return words;
    std::string const exactly = figures.number(number, 2);
    return words + fmt::format(" ({})", exactly == "0"
                                            ? "under " + figures.fixed(decimal_step(2), 2)
                                            : exactly);
}

} // namespace groat
