/// Dates as ISO 8601 writes them. A date has no time of day and no time zone.
#pragma once

#include <groat/base/result.hpp>

#include <chrono>
#include <string>
#include <string_view>

namespace groat {

using Date = std::chrono::sys_days;
using Days = std::chrono::days;

/// Reads `2026-11-25`.
/// Fails    on any other form and on days that no month has
[[nodiscard]] Result<Date> parse_date(std::string_view text);

/// `2026-11-25`
[[nodiscard]] std::string iso_date(Date date);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/calendar.ipp>
#endif
