/// Temperatures, exactly. They are no quantities: two of them do not add up, and none becomes a mass, so
/// they have a type of their own. Nothing is colder than 0 K.
#pragma once

#include <groat/base/number.hpp>

#include <optional>
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

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/temperature.ipp>
#endif
