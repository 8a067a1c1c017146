#pragma once

#include <groat/measure/tray.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>
#include <groat/measure/quantity.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace groat {

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

GROAT_INLINE Integer pieces_on_tray(TrayFit const& fit) {
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

GROAT_INLINE Result<TraySize> parse_tray_size(std::string_view text, Measures measures) {
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
