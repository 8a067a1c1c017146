/// Temperatures, exactly. They are no quantities: two of them do not add up, and none becomes a mass, so
/// they have a type of their own. Nothing is colder than 0 K.
#pragma once

#include <groat/base/name.hpp>
#include <groat/base/number.hpp>

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace groat {

enum class TemperatureScale { fahrenheit, celsius, kelvin };

struct Temperature {
    Number kelvin; ///< 0 or above
};

/// What the temperature reads on a scale: `C = K - 273.15`, `F = C * 9/5 + 32`.
/// Source   SI brochure (BIPM, 9th ed.), 2.3.1, for 273.15; NIST SP 811, B.8, for 9/5 and 32
/// Example  100 C on Fahrenheit's scale  ->  212
[[nodiscard]] Number on_scale(Temperature const& temperature, TemperatureScale scale);

/// The temperature that reads so on a scale. Fails below 0 K.
[[nodiscard]] Result<Temperature> temperature_of(Number const& reading, TemperatureScale scale);

/// The scale of a word: `F`, `C`, `K`, with or without `°`, or its name; null where it is none. A small
/// `c` is a cup to many and a small `f` nothing, so that letters have to be capitals.
[[nodiscard]] std::optional<TemperatureScale> find_scale(std::string_view word);

/// Whether a text ends in a word that is a scale, and so is to be read as a temperature.
[[nodiscard]] bool is_temperature(std::string_view text);

/// Reads `350 F`, `176.7 °C`, `-18 celsius`. Fails unless it is a number and a scale, and not below 0 K.
[[nodiscard]] Result<Temperature> parse_temperature(std::string_view text);

/// "°F", "°C", "K".
[[nodiscard]] std::string_view symbol(TemperatureScale scale);

// ---------------------------------------------------------------------------------------------------

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

inline Number on_scale(Temperature const& temperature, TemperatureScale scale) {
    if (scale == TemperatureScale::kelvin) return temperature.kelvin;
    Number const celsius = temperature.kelvin - Number(27315, 100);
    return scale == TemperatureScale::celsius ? celsius : celsius * Number(9, 5) + 32;
}

inline Result<Temperature> temperature_of(Number const& reading, TemperatureScale scale) {
    Number kelvin = reading;
    if (scale == TemperatureScale::fahrenheit) kelvin = (kelvin - 32) * Number(5, 9);
    if (scale != TemperatureScale::kelvin) kelvin += Number(27315, 100);
    if (kelvin.is_negative())
        return refuse("bad-temperature", "nothing is colder than -273.15 °C",
                      "look at the sign and the scale, as in '-18 C' or '350 F'");
    return Temperature{kelvin};
}

inline std::optional<TemperatureScale> find_scale(std::string_view word) {
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

inline bool is_temperature(std::string_view text) {
    return temperature_detail::parted(text).scale.has_value();
}

inline Result<Temperature> parse_temperature(std::string_view text) {
    auto const parts = temperature_detail::parted(text);
    if (!parts.scale)
        return refuse("bad-temperature",
                      fmt::format("'{}' is not a temperature", shortened(text, 32)),
                      "write a number and its scale, as 350 F or 175 C");
    return temperature_of(parts.reading, *parts.scale);
}

inline std::string_view symbol(TemperatureScale scale) {
    constexpr std::array<std::string_view, 3> symbols = {"°F", "°C", "K"};
    return symbols[static_cast<std::size_t>(scale)];
}

} // namespace groat
