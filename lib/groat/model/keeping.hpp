/// How a thing is kept, and for how long.
#pragma once

#include <optional>
#include <string_view>

namespace groat {

/// From the least demanding to the most: of two that meet in one product, the later one rules.
/// `cold` is at or below 5 °C (41 °F), FDA Food Code 2022, 3-501.16(A)(2).
enum class KeepAt { room, cool, cold, frozen };

struct Keeping {
    std::optional<KeepAt> at;
    std::optional<int> days;

    [[nodiscard]] bool is_stated() const { return at || days; }
};

/// Whether it needs the cold.
[[nodiscard]] bool is_kept_cold(Keeping const& keeping);

/// What rules when things kept one way and the other are put together.
[[nodiscard]] Keeping strictest(Keeping const& a, Keeping const& b);

inline constexpr std::string_view keep_at_words[] = {"room", "cool", "cold", "frozen"};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/keeping.ipp>
#endif
