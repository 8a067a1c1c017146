#include "commands.hpp"

#include "output.hpp"

#include <fmt/format.h>

#include <chrono>
#include <ctime>

namespace groat::cli {

Date today() {
    std::time_t const now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return std::chrono::sys_days{std::chrono::year(local.tm_year + 1900) / (local.tm_mon + 1) /
                                 local.tm_mday};
}

namespace {

std::optional<std::optional<Date>> date_said(char const* option, std::string const& words) {
    if (words.empty()) return std::optional<Date>();
    auto const date = parse_date(words);
    if (date) return std::optional<Date>(*date);
    complain(fmt::format("groat: {}: {}: {}\n", option, date.error().what, date.error().help));
    return std::nullopt;
}

} // namespace

std::optional<std::optional<Date>> asked_date(Options const& options) {
    return date_said("--on", options.on);
}

std::optional<std::optional<Date>> made_on(Options const& options) {
    return date_said("--made", options.made);
}

} // namespace groat::cli
