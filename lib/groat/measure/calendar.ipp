#pragma once

#include <groat/measure/calendar.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

namespace groat {

GROAT_INLINE Result<Date> parse_date(std::string_view text) {
    auto const bad = [&](std::string what) {
        return refuse("bad-date", std::move(what), "write a date as 2026-11-25", 0, text.size());
    };
    bool shaped = text.size() == 10 && text[4] == '-' && text[7] == '-';
    for (std::size_t i = 0; shaped && i < text.size(); ++i)
        if (i != 4 && i != 7) shaped = text[i] >= '0' && text[i] <= '9';
    if (!shaped) return bad(fmt::format("'{}' is not a date", shortened(text, 32)));
    auto const part = [&](std::size_t from, std::size_t count) {
        int value = 0;
        for (std::size_t i = from; i < from + count; ++i) value = value * 10 + (text[i] - '0');
        return value;
    };
    std::chrono::year_month_day const date{std::chrono::year(part(0, 4)),
                                           std::chrono::month(static_cast<unsigned>(part(5, 2))),
                                           std::chrono::day(static_cast<unsigned>(part(8, 2)))};
    if (!date.ok()) return bad(fmt::format("there is no day {}", text));
    return Date(date);
}

GROAT_INLINE std::string iso_date(Date date) {
    std::chrono::year_month_day const day(date);
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()),
                       static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

} // namespace groat
