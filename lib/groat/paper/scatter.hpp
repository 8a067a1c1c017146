/// Points on a plane in text: each a label at its place, and a line across each axis. A point always stands on
/// its true side of both lines, since the parts on either side are scaled apart; a point at a line stands
/// on its upper or right side.
#pragma once

#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

struct ScatterPoint {
    Number x;
    Number y;
    std::string label;
};

/// One direction of the plane: where its line stands, and the words at its ends and at the line.
struct ScatterAxis {
    Number line;
    std::string first; ///< at the least value
    std::string at_line;
    std::string last; ///< at the greatest value
};

struct Scatter {
    std::vector<ScatterPoint> points;
    ScatterAxis across; ///< from 0
    ScatterAxis up;
    /// Above the plane on the left and right, below it on the left and right.
    std::string corners[4];
};

/// The plane in lines of at most 80 columns, and below it what could not be shown: labels whose place was
/// taken already by another.
[[nodiscard]] std::vector<std::string> draw(Scatter const& scatter);

// ---------------------------------------------------------------------------------------------------

namespace scatter_drawing {

inline constexpr int width = 68;
inline constexpr int height = 19;
inline constexpr int least = 3; ///< columns and rows on either side of a line

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

    void put(ScatterPoint const& point) {
        int const length = static_cast<int>(display_width(point.label));
        int const row = up_(point.y);
        int column = across_(point.x);
        int const end = column < across_.below ? across_.below : width;
        column = std::max(0, std::min(column, end - length));
        for (int i = column; i < column + length; ++i) {
            auto const taken = owners_.find({row, i});
            if (taken == owners_.end()) continue;
            hidden_[taken->second].push_back(point.label);
            return;
        }
        for (int i = column; i < column + length; ++i) {
            owners_[{row, i}] = point.label;
            cell(row, i).clear();
        }
        cell(row, column) = point.label;
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

} // namespace scatter_drawing

inline std::vector<std::string> draw(Scatter const& scatter) {
    namespace parts = scatter_drawing;
    std::vector<Number> xs;
    std::vector<Number> ys;
    for (ScatterPoint const& point : scatter.points) {
        xs.push_back(point.x);
        ys.push_back(point.y);
    }
    Number const lowest = ys.empty() ? scatter.up.line : *std::min_element(ys.begin(), ys.end());
    parts::Cut const across(xs, 0, scatter.across.line, parts::width);
    parts::Cut const up(ys, std::min(lowest, scatter.up.line), scatter.up.line, parts::height);
    parts::Plane plane(across, up);
    for (ScatterPoint const& point : scatter.points) plane.put(point);

    std::size_t margin = 0;
    for (std::string const* each : {&scatter.up.first, &scatter.up.at_line, &scatter.up.last})
        margin = std::max(margin, display_width(*each));
    auto const beside = [&](std::string const& label) {
        return std::string(margin - display_width(label), ' ') + label + ' ';
    };
    std::string const nothing;
    std::vector<std::string> lines;
    lines.push_back(beside(nothing) +
                    parts::both_ends(scatter.corners[0], scatter.corners[1], parts::width));
    for (int row = parts::height - 1; row >= 0; --row) {
        std::string const& label = row == parts::height - 1 ? scatter.up.last
                                   : row == up.below        ? scatter.up.at_line
                                   : row == 0               ? scatter.up.first
                                                            : nothing;
        lines.push_back(beside(label) + plane.row(row));
    }
    std::string axis =
        scatter.across.first +
        std::string(static_cast<std::size_t>(std::max(
                        1, across.below - static_cast<int>(display_width(scatter.across.first)))),
                    ' ') +
        scatter.across.at_line;
    lines.push_back(beside(nothing) + parts::both_ends(axis, scatter.across.last, parts::width));
    lines.push_back(beside(nothing) +
                    parts::both_ends(scatter.corners[2], scatter.corners[3], parts::width));
    for (auto const& [label, others] : plane.hidden())
        lines.push_back(fmt::format("At the place of {} also: {}", label, fmt::join(others, ", ")));
    return lines;
}

} // namespace groat
