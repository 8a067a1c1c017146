/// How many round pieces a tray holds, from its size, how far a piece spreads and the gap between two.
/// Exact: rows that stand in the gaps of the row before lie half the square root of 3 apart, and that is
/// compared by squares, never rounded.
#pragma once

#include <groat/measure/quantity.hpp>

#include <algorithm>
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

// ---------------------------------------------------------------------------------------------------

namespace tray_detail {

/// How many places of `pitch` there are along a stretch that the first one has been taken off already.
inline Integer places(Number const& rest, Number const& pitch) {
    return rest.is_negative() ? Integer(0) : Integer(steps(rest, pitch, Tie::down) + 1);
}

/// Rows half a root of 3 apart: `3 k² pitch² <= 4 rest²` for the most whole `k`, and one.
inline Integer staggered_rows(Number const& rest, Number const& pitch) {
    if (rest.is_negative()) return 0;
    Integer const square = steps(4 * rest * rest / (3 * pitch * pitch), 1, Tie::down);
    return boost::multiprecision::sqrt(square) + 1;
}

/// With rows along `width`.
inline Integer staggered(TrayFit const& fit, Number const& width, Number const& length) {
    Number const pitch = fit.spread + fit.gap;
    Integer const rows = staggered_rows(length - fit.spread, pitch);
    Integer const even = places(width - fit.spread, pitch);
    Integer const odd = places(width - fit.spread - pitch / 2, pitch);
    return (rows + 1) / 2 * even + rows / 2 * odd;
}

} // namespace tray_detail

inline Integer pieces_on_tray(TrayFit const& fit) {
    if (!fit.width.is_positive() || !fit.length.is_positive() || !fit.spread.is_positive() ||
        fit.gap.is_negative())
        throw std::logic_error("a tray or a piece without a size");
    using tray_detail::places;
    using tray_detail::staggered;
    Number const pitch = fit.spread + fit.gap;
    if (fit.layout == TrayLayout::square)
        return places(fit.width - fit.spread, pitch) * places(fit.length - fit.spread, pitch);
    return std::max(staggered(fit, fit.width, fit.length), staggered(fit, fit.length, fit.width));
}

inline Result<TraySize> parse_tray_size(std::string_view text, Measures measures) {
    auto const bad = [&] {
        return refuse("bad-tray", fmt::format("'{}' is no size of a tray", shortened(text, 32)),
                      "write both sides of it, as 40 x 60 cm", 0, text.size());
    };
    std::size_t split = text.find('x');
    std::size_t width = 1;
    if (split == std::string_view::npos) {
        split = text.find("×");
        width = std::string_view("×").size();
    }
    if (split == std::string_view::npos) return bad();
    auto const second = parse_quantity(text.substr(split + width), measures);
    if (!second || !second->is(Dimension::distance) || !second->amount.is_positive()) return bad();
    std::string_view const first = trimmed(text.substr(0, split));
    if (auto const bare = parse_number(first)) {
        if (!bare->is_positive()) return bad();
        return TraySize{*bare * second->unit->factor, second->amount};
    }
    auto const own = parse_quantity(first, measures);
    if (!own || !own->is(Dimension::distance) || !own->amount.is_positive()) return bad();
    return TraySize{own->amount, second->amount};
}

} // namespace groat
