#pragma once

#include <groat/paper/scatter.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <stdexcept>
#include <string_view>

namespace groat {

namespace scatter_detail {

inline constexpr int least = 3; ///< columns and rows on either side of a line

inline constexpr int width = 68;
inline constexpr int height = 19;

/// `value` in `[0, whole]` as one of `places` places from 0 on.
inline int place(Number const& value, Number const& whole, int places) {
    if (!whole.is_positive() || value.is_negative()) return 0;
    return static_cast<int>(steps(value / whole * (places - 1), 1, Tie::down));
}

/// A direction cut in two by its line.
struct Cut {
    Number line;
    Number
        near; ///< the line to a millionth: where a point stands need not be known better than that
    Number least_value;
    Number greatest;
    int size;
    int below; ///< places before the line

    Cut(std::vector<Number> const& values, Number const& start, Number at, int places)
        : line(std::move(at)),
          near(round_to(line, Number(1) / 1'000'000, Tie::half_even)),
          least_value(start),
          greatest(near),
          size(places) {
        for (Number const& value : values) {
            least_value = std::min(least_value, value);
            greatest = std::max(greatest, value);
        }
        Number const range = greatest - least_value;
        int const wanted = range.is_positive() ? place(near - least_value, range, size) : 0;
        below = std::clamp(wanted, least, size - 1 - least);
    }
    /// Of a value: `below` is the line's own place, which no value takes.
    [[nodiscard]] int operator()(Number const& value) const {
        if (value < line) return below - 1 - place(near - value, near - least_value, below);
        return below + 1 + place(value - near, greatest - near, size - below - 1);
    }
};

class Plane {
public:
    Plane(Cut const& across, Cut const& up)
        : cells_(height, std::vector<std::string>(width, " ")), across_(across), up_(up) {
        for (int i = 0; i < height; ++i) cell(i, across.below) = "│";
        for (int i = 0; i < width; ++i) cell(up.below, i) = i == across.below ? "┼" : "─";
    }

    void put(ChartPoint const& point) {
        std::string const label = point.label.empty() ? "•" : printable(point.label);
        int const length = static_cast<int>(display_width(label));
        int const row = up_(point.y);
        int column = across_(point.x);
        int const end = column < across_.below ? across_.below : width;
        column = std::max(0, std::min(column, end - length));
        for (int i = column; i < column + length; ++i) {
            auto const taken = owners_.find({row, i});
            if (taken == owners_.end()) continue;
            if (!point.label.empty()) hidden_[taken->second].push_back(label);
            return;
        }
        for (int i = column; i < column + length; ++i) {
            owners_[{row, i}] = label;
            cell(row, i).clear();
        }
        cell(row, column) = label;
    }

    [[nodiscard]] std::string row(int from_below) const {
        std::string line;
        for (std::string const& each : cells_[static_cast<std::size_t>(from_below)]) line += each;
        return line;
    }
    [[nodiscard]] std::map<std::string, std::vector<std::string>> const& hidden() const {
        return hidden_;
    }

private:
    std::string& cell(int row, int column) {
        return cells_[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
    }

    std::vector<std::vector<std::string>> cells_; ///< by row from below, then column
    Cut across_;
    Cut up_;
    std::map<std::pair<int, int>, std::string> owners_;
    std::map<std::string, std::vector<std::string>> hidden_;
};

inline std::string both_ends(std::string_view left, std::string_view right, int columns) {
    int const gap =
        columns - static_cast<int>(display_width(left)) - static_cast<int>(display_width(right));
    return std::string(left) + std::string(static_cast<std::size_t>(std::max(gap, 1)), ' ') +
           std::string(right);
}

} // namespace scatter_detail

GROAT_INLINE std::vector<std::string> lettered(Chart const& chart) {
    namespace parts = scatter_detail;
    bool const is_plane = chart.series.size() == 1 && chart.across.line && chart.up.line &&
                          !chart.across.ticks.empty() && !chart.up.ticks.empty();
    if (!chart.is_lettered || !is_plane)
        throw std::logic_error("a chart without its lines was to be set in letters");
    std::vector<ChartPoint> const& points = chart.series.front().points;
    std::vector<Number> xs;
    std::vector<Number> ys;
    for (ChartPoint const& point : points) {
        xs.push_back(point.x);
        ys.push_back(point.y);
    }
    ChartLine const& across_line = *chart.across.line;
    ChartLine const& up_line = *chart.up.line;
    Number const lowest = ys.empty() ? up_line.at : *std::min_element(ys.begin(), ys.end());
    parts::Cut const across(xs, 0, across_line.at, parts::width);
    parts::Cut const up(ys, std::min(lowest, up_line.at), up_line.at, parts::height);
    parts::Plane plane(across, up);
    for (ChartPoint const& point : points) plane.put(point);

    std::string const& lowest_shown = chart.up.ticks.front().shown;
    std::string const& highest_shown = chart.up.ticks.back().shown;
    std::size_t margin = 0;
    for (std::string const* each : {&lowest_shown, &up_line.shown, &highest_shown})
        margin = std::max(margin, display_width(*each));
    auto const beside = [&](std::string const& label) {
        return std::string(margin - display_width(label), ' ') + label + ' ';
    };
    std::string const nothing;
    std::vector<std::string> lines;
    lines.push_back(beside(nothing) +
                    parts::both_ends(chart.corners[0], chart.corners[1], parts::width));
    for (int row = parts::height - 1; row >= 0; --row) {
        std::string const& label = row == parts::height - 1 ? highest_shown
                                   : row == up.below        ? up_line.shown
                                   : row == 0               ? lowest_shown
                                                            : nothing;
        lines.push_back(beside(label) + plane.row(row));
    }
    std::string const& first = chart.across.ticks.front().shown;
    std::string const axis =
        first +
        std::string(static_cast<std::size_t>(
                        std::max(1, across.below - static_cast<int>(display_width(first)))),
                    ' ') +
        across_line.shown;
    lines.push_back(beside(nothing) +
                    parts::both_ends(axis, chart.across.ticks.back().shown, parts::width));
    lines.push_back(beside(nothing) +
                    parts::both_ends(chart.corners[2], chart.corners[3], parts::width));
    for (auto const& [label, others] : plane.hidden())
        lines.push_back(fmt::format("At the place of {} also: {}", label, fmt::join(others, ", ")));
    return lines;
}

} // namespace groat
