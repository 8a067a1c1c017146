#include "session.hpp"

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

Result<Date> date_behind(std::string_view option, std::string_view words) {
    auto const date = parse_date(words);
    if (date) return *date;
    Flaw const& flaw = date.error();
    return refuse(flaw.code, fmt::format("{}: {}: {}", option, flaw.what, flaw.help));
}

Result<std::optional<Date>> date_said(std::string_view option, std::string_view words) {
    if (words.empty()) return std::optional<Date>();
    auto const date = date_behind(option, words);
    if (!date) return Refused(date.error());
    return std::optional<Date>(*date);
}

Result<desk::Dates> dates_said(Options const& options) {
    auto const on = date_said("--on", options.on);
    if (!on) return Refused(on.error());
    auto const made = date_said("--made", options.made);
    if (!made) return Refused(made.error());
    return desk::Dates{*on, today(), *made};
}

} // namespace groat::cli
