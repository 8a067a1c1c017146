/// What a quantity is an amount of. Mass, volume and count convert into one another only through facts
/// about the thing measured (see model/convert.hpp); the others never do.
#pragma once

#include <string_view>

namespace groat {

/// The base unit of each: g, mL, each, s, J, W, m.
enum class Dimension { mass, volume, count, time, energy, power, distance };

/// The word for a message: "mass", "volume" and so on.
[[nodiscard]] constexpr std::string_view to_text(Dimension dimension) {
    switch (dimension) {
    case Dimension::mass: return "mass";
    case Dimension::volume: return "volume";
    case Dimension::count: return "count";
    case Dimension::time: return "time";
    case Dimension::energy: return "energy";
    case Dimension::power: return "power";
    case Dimension::distance: return "distance";
    }
    return "";
}

} // namespace groat
