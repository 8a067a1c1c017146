#pragma once

#include <groat/paper/text.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/rounding.hpp>
#include <groat/base/text.hpp>
#include <groat/paper/bars.hpp>
#include <groat/paper/scatter.hpp>

#include <algorithm>
#include <string_view>
#include <vector>

namespace groat {

namespace text_drawing_detail {

inline std::string repeated(std::string_view piece, std::size_t times) {
    std::string result;
    result.reserve(piece.size() * times);
    for (std::size_t i = 0; i < times; ++i) result += piece;
    return result;
}

inline std::string left(std::string_view text, std::size_t width) {
    std::size_t const own = display_width(text);
    return std::string(text) + std::string(width > own ? width - own : 0, ' ');
}

inline std::string right(std::string_view text, std::size_t width) {
    std::size_t const own = display_width(text);
    return std::string(width > own ? width - own : 0, ' ') + std::string(text);
}

inline void put_line(std::string& text, std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    text += line;
    text += '\n';
}

inline bool is_money(Figure const& figure) {
    return figure.unit.size() == 3 && Currency::find(figure.unit);
}

GROAT_INLINE std::string shown(Cell const& cell, Style const& style) {
    if (auto const* words = std::get_if<std::string>(&cell)) return printable(*words);
    if (auto const* day = std::get_if<Day>(&cell))
        return printable(day->is_short ? style.short_date(day->date) : style.date(day->date));
    auto const* figure = std::get_if<Figure>(&cell);
    if (figure == nullptr) return {};
    if (is_money(*figure)) return style.money(figure->shown);
    std::string const number = style.numbers_in(figure->shown);
    return figure->unit == "%" ? number + " %" : number;
}

GROAT_INLINE std::string shown_alone(Cell const& cell, Style const& style) {
    auto const* figure = std::get_if<Figure>(&cell);
    if (figure == nullptr || figure->unit == "g" || figure->unit == "each" || figure->unit == "%" ||
        (style.has_sign() && is_money(*figure)))
        return shown(cell, style);
    return shown(cell, style) + ' ' + figure->unit;
}

class Drawing {
public:
    Drawing(Style const& style, std::size_t columns) : style_(&style), columns_(columns) {}

    std::string draw(Sheet const& sheet) {
        for (std::string const& line : sheet.letterhead) put_line(text_, printable(line));
        if (!sheet.letterhead.empty()) text_ += '\n';
        put_line(text_, printable(sheet.title));
        put_line(text_, repeated("═", columns_));
        for (Section const& section : sheet.sections)
            std::visit([&](auto const& each) { draw(each); }, section);
        return std::move(text_);
    }

private:
    void heading(std::string const& title) {
        text_ += '\n';
        if (title.empty()) return;
        put_line(text_, printable(title));
        put_line(text_, repeated("─", columns_));
    }

    void draw(Facts const& facts) {
        heading(facts.title);
        std::size_t label_width = 0;
        for (Fact const& fact : facts.facts)
            label_width = std::max(label_width, display_width(printable(fact.label)));
        for (Fact const& fact : facts.facts) {
            std::string label = printable(fact.label);
            std::size_t const room = columns_ > label_width + 22 ? columns_ - label_width - 2 : 20;
            for (std::string const& line : wrapped(shown_alone(fact.value, *style_), room)) {
                put_line(text_, left(label, label_width + 2) + line);
                label.clear();
            }
        }
    }

    void draw(Remarks const& remarks) {
        if (remarks.lines.empty()) return;
        heading(remarks.title);
        for (std::string const& remark : remarks.lines) {
            for (std::string const& line : wrapped(printable(remark), columns_))
                put_line(text_, line);
        }
    }

    void draw(Chart const& chart) {
        if (!chart.is_lettered) return;
        heading(chart.title);
        for (std::string const& line : lettered(chart)) put_line(text_, line);
    }

    void draw(Table const& table) {
        if (table.says_nothing()) return;
        heading(table.title);
        if (!table.rows.empty()) put_table(table);
        if (table.remark.empty()) return;
        for (std::string const& line : wrapped(printable(table.remark), columns_))
            put_line(text_, line);
    }

    void put_table(Table const& table) {
        std::vector<std::size_t> widths = column_widths(table, Fit::whole_words);
        Style const* const declared = style_;
        Style const without_sign = style_->without_sign();
        if (width_of(widths) > columns_ && style_->has_sign()) {
            style_ = &without_sign;
            widths = column_widths(table, Fit::whole_words);
        }
        for (Fit const fit : {Fit::broken_words, Fit::broken_titles})
            if (width_of(widths) > columns_) widths = column_widths(table, fit);
        std::vector<Number> const most = greatest_bars(table);
        std::vector<Cell> titles;
        for (Column const& column : table.columns) titles.emplace_back(column.title);
        if (has_titles(table)) {
            put_row(table, titles, widths, most, true);
            put_line(text_, rule(table, widths));
        }
        bool is_first = true;
        for (Row const& row : table.rows) {
            if (row.kind == Row::Kind::total && !is_first) put_line(text_, rule(table, widths));
            put_row(table, row.cells, widths, most, false);
            is_first = false;
        }
        style_ = declared;
    }

    /// Of a whole row.
    static std::size_t width_of(std::vector<std::size_t> const& widths) {
        std::size_t width = 2 * (widths.size() - 1);
        for (std::size_t const each : widths) width += each;
        return width;
    }

    static bool has_titles(Table const& table) {
        return std::any_of(table.columns.begin(), table.columns.end(),
                           [](Column const& column) { return !column.title.empty(); });
    }

    /// Thin strokes under each column, so that one sees what belongs together.
    static std::string rule(Table const& table, std::vector<std::size_t> const& widths) {
        std::string line;
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            if (i > 0) line += "  ";
            line += repeated("╌", widths[i]);
        }
        return line;
    }

    /// What gives way in a table that is too wide.
    enum class Fit { whole_words, broken_words, broken_titles };

    /// The least width of a column: never less than its figures.
    [[nodiscard]] std::size_t least_width(Table const& table, std::size_t i, Fit fit) const {
        constexpr std::size_t readable = 12; // words still read
        constexpr std::size_t narrow = 6;
        std::size_t least = fit == Fit::broken_titles ? narrow : readable;
        auto const hold = [&](std::string const& words) {
            if (fit != Fit::whole_words) return;
            for (std::string const& word : wrapped(words, 1))
                least = std::max(least, display_width(word));
        };
        hold(printable(table.columns[i].title));
        for (Row const& row : table.rows) {
            if (i >= row.cells.size()) continue;
            std::string const cell = shown(row.cells[i], *style_);
            if (std::holds_alternative<std::string>(row.cells[i]))
                hold(cell);
            else
                least = std::max(least, display_width(cell));
        }
        return least;
    }

    /// As wide as the figures and the longest word of the title; words share what is left.
    [[nodiscard]] std::vector<std::size_t> column_widths(Table const& table, Fit fit) const {
        std::size_t const count = table.columns.size();
        std::vector<std::size_t> widths(count, 1);
        std::size_t used = 2 * (count - 1);
        std::vector<std::size_t> flexible;
        for (std::size_t i = 0; i < count; ++i) {
            if (table.columns[i].is_bar) {
                widths[i] = longest_bar;
                used += widths[i];
                continue;
            }
            std::string const title = printable(table.columns[i].title);
            for (std::string const& word : wrapped(title, 1))
                widths[i] = std::max(widths[i], display_width(word));
            for (Row const& row : table.rows)
                if (i < row.cells.size())
                    widths[i] = std::max(widths[i], display_width(shown(row.cells[i], *style_)));
            if (table.columns[i].is_words) flexible.push_back(i);
            used += widths[i];
        }
        std::vector<std::size_t> giving = flexible;
        if (fit == Fit::broken_titles)
            for (std::size_t i = 0; i < count; ++i)
                if (!table.columns[i].is_words && !table.columns[i].is_bar) giving.push_back(i);
        std::vector<std::size_t> least(count, 0);
        if (used > columns_)
            for (std::size_t const i : giving) least[i] = least_width(table, i, fit);
        while (used > columns_) { // the widest gives way
            std::size_t widest = count;
            for (std::size_t const i : giving)
                if (widths[i] > least[i] && (widest == count || widths[i] > widths[widest]))
                    widest = i;
            if (widest == count) break;
            --widths[widest];
            --used;
        }
        for (std::size_t i = 0; i < count; ++i)
            for (; table.columns[i].is_bar && used > columns_ && widths[i] > shortest_bar; --used)
                --widths[i];
        // Too narrow: titles get onto one line where there is room, figures get air, words the rest.
        auto const grow = [&](std::size_t i, std::size_t wanted) {
            std::size_t const more = wanted > widths[i] ? wanted - widths[i] : 0;
            if (used + more > columns_) return;
            widths[i] += more;
            used += more;
        };
        constexpr std::size_t airy = 10;
        for (std::size_t i = 0; i < count; ++i) {
            std::size_t const wanted = display_width(printable(table.columns[i].title));
            for (std::size_t k = 0; k < count; ++k) // a bar says as much where it is shorter
                for (; table.columns[k].is_bar && wanted > widths[i] && widths[k] > short_bar &&
                       used + wanted - widths[i] > columns_;
                     --used)
                    --widths[k];
            grow(i, wanted);
        }
        for (std::size_t i = 0; i < count; ++i)
            if (!table.columns[i].is_words && !table.columns[i].is_bar) grow(i, airy);
        // names, and what is said of each
        bool const is_list = flexible.size() == count && !has_titles(table);
        if (used < columns_ && !flexible.empty())
            widths[is_list ? flexible.back() : flexible.front()] += columns_ - used;
        return widths;
    }

    void put_row(Table const& table, std::vector<Cell> const& cells,
                 std::vector<std::size_t> const& widths, std::vector<Number> const& most,
                 bool is_title) {
        std::vector<std::vector<std::string>> lines(table.columns.size());
        std::size_t height = 1;
        for (std::size_t i = 0; i < table.columns.size() && i < cells.size(); ++i) {
            bool const is_bar = table.columns[i].is_bar && !is_title;
            std::string const text =
                is_bar ? bar(cells[i], most[i], widths[i]) : shown(cells[i], *style_);
            bool const is_words = is_title || std::holds_alternative<std::string>(cells[i]);
            lines[i] = is_words ? wrapped(text, widths[i], LongWord::broken)
                                : std::vector<std::string>{text};
            height = std::max(height, lines[i].size());
        }
        for (std::size_t at = 0; at < height; ++at) {
            std::string line;
            for (std::size_t i = 0; i < table.columns.size(); ++i) {
                if (i > 0) line += "  ";
                // titles stand on the last of their lines, everything else on the first
                std::size_t const missing =
                    is_title ? height - std::max<std::size_t>(lines[i].size(), 1) : 0;
                bool const is_here = at >= missing && at - missing < lines[i].size();
                std::string const piece = is_here ? lines[i][at - missing] : std::string();
                bool const is_left = table.columns[i].is_words || table.columns[i].is_bar;
                line += is_left ? left(piece, widths[i]) : right(piece, widths[i]);
            }
            put_line(text_, line);
        }
    }

    static std::string bar(Cell const& cell, Number const& most, std::size_t width) {
        Integer const length = steps(bar_length(cell, most) * width, 1, Tie::half_even);
        return repeated("▪", static_cast<std::size_t>(length));
    }

    static constexpr std::size_t longest_bar = 20;
    static constexpr std::size_t short_bar = 12; ///< where a title needs the room
    static constexpr std::size_t shortest_bar = 8;
    Style const* style_;
    std::size_t columns_;
    std::string text_;
};

} // namespace text_drawing_detail

GROAT_INLINE std::string to_text(Sheet const& sheet, std::size_t columns) {
    return text_drawing_detail::Drawing(sheet.style, columns).draw(sheet);
}

} // namespace groat
