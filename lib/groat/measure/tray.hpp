/// How many round pieces a tray holds, from its size, how far a piece spreads and the gap between two.
/// Exact: rows that stand in the gaps of the row before lie half the square root of 3 apart, and that is
/// compared by squares, never rounded.
#pragma once

#include <groat/measure/unit.hpp>

#include <string_view>

namespace groat {

/// In straight rows, or each row moved by half a place so that its pieces stand in the gaps.
enum class TrayLayout { square, staggered };

/// A tray and what lies on it, all in one unit of length. The gap is between pieces; at the edge none is
/// kept, so state the part of the tray that may be used.
struct TrayFit {
    Number width;
    Number length;
    Number spread; ///< the diameter of a finished piece, above 0
    Number gap;    ///< 0 or more
    TrayLayout layout = TrayLayout::square;
};

/// The pieces that fit; staggered rows along that side which holds more.
///
///     in a row of w      floor((w - spread) / pitch) + 1,  pitch = spread + gap
///     staggered rows     the most r with (r - 1) · pitch · √3 / 2 <= h - spread
///
/// Throws `std::logic_error` unless sizes and spread are above 0 and the gap is not below it.
/// Example  40 x 60 cm, spread 7 cm, gap 2 cm  ->  24 in squares, 30 staggered
[[nodiscard]] Integer pieces_on_tray(TrayFit const& fit);

struct TraySize {
    Number width;  ///< in metres
    Number length; ///< in metres
};

/// Reads `40 x 60 cm`, `40 cm x 600 mm`, `18 × 26 in`.
/// Fails    unless it is two lengths above 0
[[nodiscard]] Result<TraySize> parse_tray_size(std::string_view text, Measures measures);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/measure/tray.ipp>
#endif
