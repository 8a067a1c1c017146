#pragma once

#include <groat/paper/html_chart.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>
#include <groat/paper/html_text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>
#include <vector>

namespace groat {

namespace html_chart_detail {

inline constexpr Size plane_size = {5600, 3600}; ///< with words in the corners
inline constexpr int letter = 76;                ///< as wide as a letter of most fonts at most
inline constexpr int radius = 45;

GROAT_INLINE int text_width(std::string_view text) {
    return static_cast<int>(std::min<std::size_t>(display_width(text), 200)) * letter;
}

/// Tenths as a number of a picture: 123 is "12.3".
inline std::string units(int tenths) {
    std::string text = fmt::format("{}{}", tenths < 0 ? "-" : "", std::abs(tenths) / 10);
    if (tenths % 10 != 0) text += fmt::format(".{}", std::abs(tenths) % 10);
    return text;
}

/// Where a value stands between two ends.
struct Scale {
    Number from;
    Number to;
    int first;
    int last;

    [[nodiscard]] int operator()(Number const& value) const {
        if (from == to) return (first + last) / 2;
        Number const part = (std::clamp(value, from, to) - from) / (to - from);
        return first + static_cast<int>(steps(part * (last - first), 1, Tie::half_even));
    }
};

inline Scale scale_of(ChartAxis const& axis, int first, int last) {
    if (axis.ticks.empty()) return {0, 0, first, last};
    return {axis.ticks.front().at, axis.ticks.back().at, first, last};
}

class Picture {
public:
    Picture(Chart const& chart, std::string name, std::string id)
        : chart_(chart), name_(std::move(name)), id_(std::move(id)) {
        bool const has_corners =
            std::any_of(chart.corners.begin(), chart.corners.end(),
                        [](std::string const& words) { return !words.empty(); });
        size_ = has_corners ? plane_size : chart.series.size() > 1 ? ways_size : line_size;
        int left = 100;
        for (ChartTick const& tick : chart.up.ticks)
            left = std::max(left, text_width(tick.shown) + 140);
        left = std::min(left, size_.width / 3);
        int right = 160;
        if (chart.up.line) add_name(chart.up.line->words, chart.up.line->at);
        if (chart.series.size() > 1)
            for (ChartSeries const& series : chart.series)
                if (!series.points.empty()) add_name(series.name, series.points.back().y);
        int high = -between_names;
        for (Name const& each : names_) {
            high += each.high() + between_names;
            for (std::string const& line : each.lines)
                right = std::max(right, text_width(line) + beside_name);
        }
        size_.height = std::max(size_.height, high + below_names);
        plane_ = {left, line_height + 90 + (chart.across.line ? line_height : 0),
                  size_.width - right, size_.height - 480};
        int const air = has_corners ? line_height + 110 : 80;
        int inset = 140; // room beside the first points of a way, where it falls or rises most
        for (ChartSeries const& series : chart.series)
            if (series.is_joined && !series.points.empty())
                inset = std::max(inset, text_width(series.points.front().label) + 110);
        x_ = scale_of(chart.across, std::min(plane_.left + inset, plane_.right - 280),
                      plane_.right - 140);
        y_ = scale_of(chart.up, plane_.bottom - (has_corners ? air : 0), plane_.top + air);
    }

    std::string draw() {
        bool const is_low = size_.width < plane_size.width;
        text_ = fmt::format("<svg class=\"{}\" viewBox=\"0 0 {} {}\" role=\"img\" "
                            "aria-labelledby=\"{}-t{}\">\n<title id=\"{}-t\">{}</title>\n",
                            is_low ? "chart low" : "chart", units(size_.width), units(size_.height),
                            id_, chart_.said.empty() ? "" : " " + id_ + "-d", id_, escaped(name_));
        if (!chart_.said.empty())
            text_ += fmt::format("<desc id=\"{}-d\">{}</desc>\n", id_, escaped(chart_.said));
        draw_axes();
        draw_corners();
        for (std::size_t i = 0; i < chart_.series.size(); ++i) draw_points(i);
        for (std::size_t i = 0; i < chart_.series.size(); ++i) draw_labels(i);
        draw_names();
        text_ += "</svg>\n";
        return std::move(text_);
    }

private:
    /// To the right of the plane: what the line across means, or which series ends there.
    struct Name {
        Number at;
        std::vector<std::string> lines;
        int y = 0; ///< where it begins

        [[nodiscard]] int high() const { return static_cast<int>(lines.size()) * line_height; }
    };
    static constexpr int beside_name = 220;
    static constexpr int between_names = 40;
    static constexpr int below_names = 400; ///< room for the axis

    static std::string escaped(std::string_view text) { return html_detail::escaped(text); }

    /// In a few short lines that leave at least half of the picture to the plane, whatever it is.
    void add_name(std::string const& words, Number const& at) {
        constexpr std::size_t wide = 14;
        constexpr std::size_t most_lines = 4;
        auto const most = static_cast<std::size_t>((size_.width / 2 - beside_name) / letter);
        std::vector<std::string> lines = wrapped(words, wide);
        if (lines.size() > most_lines) {
            std::string const last = lines[most_lines - 1] + ' ' + lines[most_lines];
            lines.resize(most_lines);
            lines.back() = shortened(last, wide);
        }
        for (std::string& line : lines) line = shortened(line, most);
        names_.push_back({at, std::move(lines)});
    }

    /// Shortened and moved so far that it stands within the picture.
    void put_text(int x, int y, std::string_view all_words, std::string_view place,
                  std::string_view kind = {}) {
        if (all_words.empty()) return;
        std::string const words =
            shortened(all_words, static_cast<std::size_t>(size_.width / letter));
        int const wide = text_width(words);
        int const before = place == "start" ? 0 : place == "middle" ? wide / 2 : wide;
        x = std::clamp(x, before, size_.width - wide + before);
        text_ += fmt::format("<text x=\"{}\" y=\"{}\"", units(x), units(y));
        if (place != "start") text_ += fmt::format(" text-anchor=\"{}\"", place);
        if (!kind.empty()) text_ += fmt::format(" class=\"{}\"", kind);
        text_ += fmt::format(">{}</text>\n", escaped(words));
    }
    void put_line(int x1, int y1, int x2, int y2, std::string_view kind) {
        text_ += fmt::format("<path d=\"M{} {}L{} {}\" class=\"{}\"/>\n", units(x1), units(y1),
                             units(x2), units(y2), kind);
    }

    void draw_axes() {
        put_text(0, 120, chart_.up.title, "start", "soft");
        for (ChartTick const& tick : chart_.up.ticks) {
            int const y = y_(tick.at);
            put_line(plane_.left, y, plane_.right, y, "grid");
            put_text(plane_.left - 80, y + 45, tick.shown, "end", "soft");
        }
        put_line(plane_.left, plane_.bottom, plane_.right, plane_.bottom, "axis");
        put_line(plane_.left, plane_.top, plane_.left, plane_.bottom, "axis");
        int free_from = 0; // figures that would touch are left out, but never the last
        int const last = chart_.across.ticks.empty() ? 0 : x_(chart_.across.ticks.back().at);
        for (std::size_t i = 0; i < chart_.across.ticks.size(); ++i) {
            ChartTick const& tick = chart_.across.ticks[i];
            int const x = x_(tick.at);
            put_line(x, plane_.bottom, x, plane_.bottom + 50, "axis");
            int const half = text_width(tick.shown) / 2;
            bool const is_last = i + 1 == chart_.across.ticks.size();
            int const last_half = text_width(chart_.across.ticks.back().shown) / 2;
            if (!is_last && (x - half < free_from || x + half + letter > last - last_half))
                continue;
            put_text(x, plane_.bottom + 190, tick.shown, "middle", "soft");
            free_from = x + half + letter;
        }
        put_text((plane_.left + plane_.right) / 2, size_.height - 60, chart_.across.title, "middle",
                 "soft");
        if (chart_.across.line) {
            int const x = x_(chart_.across.line->at);
            put_line(x, plane_.top, x, plane_.bottom, "mean");
            put_text(x, plane_.top - 60, chart_.across.line->words, "middle");
        }
        if (chart_.up.line) {
            int const y = y_(chart_.up.line->at);
            put_line(plane_.left, y, plane_.right, y, "mean");
        }
    }

    void draw_corners() {
        auto const most =
            static_cast<std::size_t>(((plane_.right - plane_.left) / 2 - 80) / letter);
        for (std::size_t i = 0; i < 4; ++i) {
            if (chart_.corners[i].empty()) continue;
            std::string const words = shortened(chart_.corners[i], most);
            bool const is_right = i % 2 == 1;
            int const x = is_right ? plane_.right - 80 : plane_.left + 80;
            int const y = i < 2 ? plane_.top + line_height : plane_.bottom - 70;
            int const wide = text_width(words);
            taken_.push_back({is_right ? x - wide : x, y - 120, is_right ? x : x + wide, y + 40});
            put_text(x, y, words, is_right ? "end" : "start", "corner");
        }
    }

    /// A shape for each series; every other one is hollow.
    static std::string shape(std::size_t series, int x, int y) {
        auto const at = [&](int dx, int dy) { return units(x + dx) + " " + units(y + dy); };
        switch (series % 4) {
        case 0:
            return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>", units(x), units(y),
                               units(radius));
        case 1:
            return fmt::format("<path class=\"hollow\" d=\"M{}L{}L{}L{}Z\"/>", at(-42, -42),
                               at(42, -42), at(42, 42), at(-42, 42));
        case 2: return fmt::format("<path d=\"M{}L{}L{}Z\"/>", at(0, -55), at(50, 40), at(-50, 40));
        default:
            return fmt::format("<path class=\"hollow\" d=\"M{}L{}L{}L{}Z\"/>", at(0, -60),
                               at(60, 0), at(0, 60), at(-60, 0));
        }
    }

    void draw_points(std::size_t i) {
        ChartSeries const& series = chart_.series[i];
        if (series.is_joined && series.points.size() > 1) {
            std::string way;
            for (ChartPoint const& point : series.points)
                way += fmt::format("{}{} {}", way.empty() ? "M" : "L", units(x_(point.x)),
                                   units(y_(point.y)));
            text_ += fmt::format("<path d=\"{}\" class=\"way way{}\"/>\n", way, i % 4);
            keep_way_free(series);
        }
        text_ += "<g class=\"points\">";
        for (ChartPoint const& point : series.points) {
            int const x = x_(point.x);
            int const y = y_(point.y);
            text_ += shape(i, x, y);
            if (!point.label.empty())
                taken_.push_back({x - radius, y - radius, x + radius, y + radius});
        }
        text_ += "</g>\n";
    }

    /// No label is to stand on the way between two points.
    void keep_way_free(ChartSeries const& series) {
        constexpr int pieces = 40;
        for (std::size_t i = 1; i < series.points.size(); ++i) {
            int const x = x_(series.points[i - 1].x);
            int const y = y_(series.points[i - 1].y);
            int const dx = x_(series.points[i].x) - x;
            int const dy = y_(series.points[i].y) - y;
            for (int k = 1; k < pieces; ++k) {
                int const at_x = x + dx * k / pieces;
                int const at_y = y + dy * k / pieces;
                taken_.push_back({at_x - 15, at_y - 15, at_x + 15, at_y + 15});
            }
        }
    }

    /// Beside its point where nothing stands yet: joined series above and below their way, others to the right first.
    void draw_labels(std::size_t i) {
        ChartSeries const& series = chart_.series[i];
        struct Side {
            int x; ///< of -1, 0 and 1
            int y;
        };
        constexpr std::array<Side, 8> beside = {
            {{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {1, 1}, {-1, -1}, {-1, 1}}};
        constexpr std::array<Side, 8> above = {
            {{0, -1}, {1, -1}, {1, 0}, {-1, -1}, {0, 1}, {1, 1}, {-1, 1}, {-1, 0}}};
        constexpr std::array<Side, 8> below = {
            {{0, 1}, {-1, 1}, {1, 1}, {-1, 0}, {1, 0}, {0, -1}, {-1, -1}, {1, -1}}};
        auto const& sides = !series.is_joined ? beside : i == 0 ? above : below;
        for (ChartPoint const& point : series.points) {
            if (point.label.empty()) continue;
            int const x = x_(point.x);
            int const y = y_(point.y);
            int const wide = text_width(point.label);
            auto const box_at = [&](Side const& side, int away) {
                int const middle_x = x + side.x * (radius + away + wide / 2);
                int const middle_y = y + side.y * (radius + away + 60);
                return Box{middle_x - wide / 2, middle_y - 60, middle_x + wide / 2, middle_y + 60};
            };
            Box best = box_at(sides.front(), 25);
            bool is_free = false;
            for (int away = 25; away <= 145 && !is_free; away += 60) {
                for (Side const& side : sides) {
                    Box const box = box_at(side, away);
                    is_free = plane_.holds(box) &&
                              std::none_of(taken_.begin(), taken_.end(),
                                           [&](Box const& other) { return other.meets(box); });
                    if (!is_free) continue;
                    best = box;
                    break;
                }
            }
            taken_.push_back(best);
            put_text((best.left + best.right) / 2, best.bottom - 15, point.label, "middle",
                     "label");
        }
    }

    /// Each beside its line where there is room: pushed down by those above it, then up by those below.
    void draw_names() {
        std::stable_sort(names_.begin(), names_.end(),
                         [&](Name const& a, Name const& b) { return y_(a.at) < y_(b.at); });
        int free_from = 0;
        for (Name& name : names_) {
            name.y = std::max(y_(name.at) - name.high() / 2, free_from);
            free_from = name.y + name.high() + between_names;
        }
        int free_to = size_.height - below_names;
        for (std::size_t i = names_.size(); i-- > 0;) {
            Name& name = names_[i];
            name.y = std::min(name.y, free_to - name.high());
            free_to = name.y - between_names;
        }
        for (Name const& name : names_)
            for (int y = name.y; std::string const& line : name.lines)
                put_text(plane_.right + 80, (y += line_height) - 40, line, "start");
    }

    Chart const& chart_;
    std::string name_;
    std::string id_;
    std::string text_ = {};
    Size size_ = plane_size;
    std::vector<Name> names_ = {};
    Box plane_ = {};
    Scale x_ = {};
    Scale y_ = {};
    std::vector<Box> taken_ = {};
};

} // namespace html_chart_detail

GROAT_INLINE std::string to_svg(Chart const& chart, std::string const& name,
                                std::string const& id) {
    return html_chart_detail::Picture(chart, name, id).draw();
}

} // namespace groat
