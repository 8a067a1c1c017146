// A date is a day, neither a text nor a number, and has no time of day.
#include <groat/measure/calendar.hpp>

#include <chrono>
#include <string>

using groat::Date;
using groat::Days;

Date const baked = *groat::parse_date("2026-11-25");
Date const discard = baked + Days(6);
Days const kept = discard - baked;
std::string const shown = groat::iso_date(baked);

#if CASE == 1
// refused: conversion from
// refused: no viable conversion
Date const from_text = "2026-11-25";
#elif CASE == 2
// refused: conversion from
// refused: no viable conversion
Date const from_number = 20261125;
#elif CASE == 3
// refused: no match for 'operator+'
// refused: invalid operands
Date const plus_number = baked + 6;
#elif CASE == 4
// refused: no match for 'operator+'
// refused: invalid operands
auto const sum_of_dates = baked + discard;
#elif CASE == 5
// refused: conversion from
// refused: no viable conversion
Date const with_time = baked + std::chrono::hours(5);
#elif CASE == 6
// refused: no match for 'operator=='
// refused: invalid operands
bool const is_today = baked == "2026-11-25";
#elif CASE == 7
// refused: conversion from
// refused: no viable conversion
Date const taken_blindly = groat::parse_date("2026-11-25");
#endif
