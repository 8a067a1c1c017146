#pragma once

#include <groat/measure/rate.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <string>

namespace groat {

namespace rate_detail {

GROAT_INLINE Refused out_of_range(std::string_view kind, Number const& value, std::string_view why,
                                  std::string_view help) {
    return refuse("rate-out-of-range",
                  fmt::format("a {} of {} % {}", kind, decimal_at_most(value * 100, 4), why),
                  std::string(help));
}

} // namespace rate_detail

GROAT_INLINE Markup to_markup(Margin const& margin) {
    return *Markup::of(margin.value() / margin.rest());
}

GROAT_INLINE Margin to_margin(Markup const& markup) {
    return *Margin::of(markup.value() / (1 + markup.value()));
}

GROAT_INLINE Yield to_yield(Loss const& loss) { return *Yield::of(loss.rest()); }

GROAT_INLINE Result<Number> parse_percent(std::string_view text) {
    std::string_view const trim = trimmed(text);
    if (!trim.ends_with('%'))
        return refuse("bad-percent", fmt::format("'{}' is not a percentage", shortened(text, 32)),
                      "write it with its sign, as 12.5 %", 0, text.size());
    auto number = parse_number(trimmed(trim.substr(0, trim.size() - 1)));
    if (!number) return number;
    return *number / 100;
}

} // namespace groat
