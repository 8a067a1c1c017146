#pragma once

#include <groat/measure/temperature.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <array>
#include <string>

namespace groat {

namespace temperature_detail {

/// A text in two: its number, and the scale behind it; no scale where it is no temperature.
struct Parts {
    Number reading;
    std::optional<TemperatureScale> scale;
};

inline Parts parted(std::string_view text) {
    std::string_view const all = trimmed(text);
    auto const scanned = scan_number(all);
    if (!scanned) return {};
    return {scanned->number, find_scale(all.substr(scanned->length))};
}

} // namespace temperature_detail

GROAT_INLINE Number on_scale(Temperature const& temperature, TemperatureScale scale) {
    if (scale == TemperatureScale::kelvin) return temperature.kelvin;
    Number const celsius = temperature.kelvin - Number(27315, 100);
    return scale == TemperatureScale::celsius ? celsius : celsius * Number(9, 5) + 32;
}

GROAT_INLINE Result<Temperature> temperature_of(Number const& reading, TemperatureScale scale) {
    Number kelvin = reading;
    if (scale == TemperatureScale::fahrenheit) kelvin = (kelvin - 32) * Number(5, 9);
    if (scale != TemperatureScale::kelvin) kelvin += Number(27315, 100);
    if (kelvin.is_negative())
        return refuse("bad-temperature", "nothing is colder than -273.15 °C",
                      "look at the sign and the scale, as in '-18 C' or '350 F'");
    return Temperature{kelvin};
}

GROAT_INLINE std::optional<TemperatureScale> find_scale(std::string_view word) {
    struct Entry {
        std::string_view letter;
        std::string_view names[2];
        TemperatureScale scale;
    };
    constexpr Entry entries[] = {
        {"F", {"fahrenheit", "fahrenheit"}, TemperatureScale::fahrenheit},
        {"C", {"celsius", "centigrade"}, TemperatureScale::celsius},
        {"K", {"kelvin", "kelvin"}, TemperatureScale::kelvin},
    };
    std::string_view bare = trimmed(word);
    for (std::string_view const sign : {"°", "º", "degrees", "degree", "deg"}) {
        if (!bare.starts_with(sign)) continue;
        bare = trimmed(bare.substr(sign.size()));
        break;
    }
    std::string small(bare);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    for (Entry const& entry : entries)
        if (bare == entry.letter || small == entry.names[0] || small == entry.names[1])
            return entry.scale;
    return std::nullopt;
}

GROAT_INLINE bool is_temperature(std::string_view text) {
    return temperature_detail::parted(text).scale.has_value();
}

GROAT_INLINE Result<Temperature> parse_temperature(std::string_view text) {
    auto const parts = temperature_detail::parted(text);
    if (!parts.scale)
        return refuse("bad-temperature",
                      fmt::format("'{}' is not a temperature", shortened(text, 32)),
                      "write a number and its scale, as 350 F or 175 C");
    return temperature_of(parts.reading, *parts.scale);
}

GROAT_INLINE std::string_view symbol(TemperatureScale scale) {
    constexpr std::array<std::string_view, 3> symbols = {"°F", "°C", "K"};
    return symbols[static_cast<std::size_t>(scale)];
}

} // namespace groat
