/// A chart as a picture in the page: true scales, words beside the points, and nothing told by colour alone, so
/// that it reads in grey print. All is calculated in whole tenths of a unit of the picture.
#pragma once

#include <groat/base/text.hpp>
#include <groat/paper/sheet.hpp>

#include <string>
#include <string_view>

namespace groat {

/// The `<svg>` of a chart under a name; `id` begins the ids of what names it and must be its own in the page.
[[nodiscard]] std::string to_svg(Chart const& chart, std::string const& name,
                                 std::string const& id);

namespace html_chart_detail {

/// Tenths of a unit.
struct Size {
    int width;
    int height;
};
inline constexpr Size line_size = {4200, 2100}; ///< fits a phone
inline constexpr Size ways_size = {4200, 2700}; ///< of several series
inline constexpr int line_height = 160;

struct Box {
    int left;
    int top;
    int right;
    int bottom;

    [[nodiscard]] bool meets(Box const& other) const {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
    [[nodiscard]] bool holds(Box const& other) const {
        return left <= other.left && other.right <= right && top <= other.top &&
               other.bottom <= bottom;
    }
};

int text_width(std::string_view text);

} // namespace html_chart_detail

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/html_chart.ipp>
#endif
