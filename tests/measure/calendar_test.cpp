#include <groat/measure/calendar.hpp>

#include <doctest/doctest.h>

#include <chrono>
#include <string>
#include <string_view>

using groat::Date;
using groat::Days;
using groat::iso_date;
using groat::parse_date;

namespace {

Date day(std::string_view text) { return parse_date(text).value(); }

std::string refusal(std::string_view text) {
    auto const date = parse_date(text);
    return date ? "none" : date.error().what;
}

} // namespace

TEST_CASE("a date is read and written as ISO 8601 has it") {
    CHECK(day("2026-11-25") == Date(std::chrono::year(2026) / 11 / 25));
    CHECK(iso_date(day("2026-11-25")) == "2026-11-25");
    CHECK(iso_date(day("2026-01-05")) == "2026-01-05");
    CHECK(iso_date(day("0987-06-05")) == "0987-06-05");
}

TEST_CASE("leap days exist in leap years only") {
    // Gregorian calendar: every fourth year, but of the full centuries only every fourth
    CHECK(parse_date("2024-02-29"));
    CHECK(parse_date("2000-02-29"));
    CHECK(refusal("2026-02-29") == "there is no day 2026-02-29");
    CHECK(refusal("2100-02-29") == "there is no day 2100-02-29");
    CHECK(iso_date(day("2028-02-28") + Days(1)) == "2028-02-29");
    CHECK(iso_date(day("2026-02-28") + Days(1)) == "2026-03-01");
}

TEST_CASE("a day that no month has is refused") {
    CHECK(refusal("2026-04-31") == "there is no day 2026-04-31");
    CHECK(refusal("2026-13-01") == "there is no day 2026-13-01");
    CHECK(refusal("2026-00-10") == "there is no day 2026-00-10");
    CHECK(refusal("2026-06-00") == "there is no day 2026-06-00");
}

TEST_CASE("any other way to write a date is refused with the right one") {
    for (std::string_view const text :
         {"", "25.11.2026", "11/25/2026", "2026/11/25", "26-11-25", "2026-1-5", "2026-11-25 ",
          " 2026-11-25", "2026-11-25T00:00", "20261125", "today", "2026-1１-25", "+026-11-25",
          "2026-+1-25", "2026-11--5", "12026-11-25"}) {
        CAPTURE(text);
        auto const date = parse_date(text);
        REQUIRE(!date);
        CHECK(date.error().code == "bad-date");
        CHECK(date.error().help == "write a date as 2026-11-25");
        CHECK(date.error().length == text.size());
    }
    CHECK(refusal("25.11.2026") == "'25.11.2026' is not a date");
    CHECK(refusal(std::string(1'000'000, '2')).size() < 60);
}

TEST_CASE("food made on the first is thrown away by the seventh") {
    // FDA Food Code 3-501.17: at most 7 days, the day of preparation being the first
    // (Conference for Food Protection issue 2016 I-034: 1 January -> 7 January)
    CHECK(iso_date(day("2026-01-01") + Days(7 - 1)) == "2026-01-07");
    CHECK(iso_date(day("2026-12-28") + Days(7 - 1)) == "2027-01-03");
}

TEST_CASE("dates count days between them and compare") {
    CHECK(day("2026-12-25") - day("2026-11-25") == Days(30));
    CHECK(day("2025-12-31") < day("2026-01-01"));
}

TEST_CASE("every day of two centuries reads back as itself") {
    for (Date date = day("1900-01-01"); date < day("2100-01-01"); date += Days(1))
        REQUIRE(day(iso_date(date)) == date);
}
