/// A sheet before it is drawn: sections of facts, tables, remarks and charts whose figures are already rounded for
/// the reader and still carry their exact value. Every renderer draws any sheet; none calculates.
#pragma once

#include <groat/measure/style.hpp>
#include <groat/paper/look.hpp>

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace groat {

/// A figure as it is shown, with what it is exactly and in which unit ("USD", "%", "g", "each", "min").
/// The exact value of a percentage is the share: 40 % is 2/5.
///
/// `shown` is written plainly, with a point and no groups: programs read it, and renderers put it into the
/// style of the sheet.
struct Figure {
    std::string shown;
    Number exact;
    std::string unit;
};

/// A day, which each reader writes in their own way; `is_short` where it stands in a column.
struct Day {
    Date date;
    bool is_short = false;
};

/// Nothing, words, a figure, or a day.
using Cell = std::variant<std::monostate, std::string, Figure, Day>;

/// What programs read beside what people see: a name by itself where a sentence holds it, several where a sentence
/// lists them.
struct Told {
    std::string key;
    std::variant<Cell, std::vector<std::string>> value;
};

/// `key` names a thing for programs and is fixed, `label` is for people.
struct Fact {
    std::string key;
    std::string label;
    Cell value;
};
struct Facts {
    std::string key;
    std::string title;
    std::vector<Fact> facts;
    std::string of = {};         ///< what this one is about, where a sheet has several of its kind
    std::vector<Told> told = {}; ///< for programs alone
};

struct Column {
    std::string key;
    std::string title;
    bool is_words = false; ///< set left; figures are set right
    bool is_bar = false;   ///< its figures are drawn as lengths, see bars.hpp
};
struct Row {
    enum class Kind { line, subtotal, total };
    std::string key;
    std::vector<Cell> cells;
    Kind kind = Kind::line;
    std::vector<Told> told = {}; ///< for programs alone
};
/// Without rows it is an empty list for programs; people see only its title and remark, and nothing where it has
/// no remark.
struct Table {
    std::string key;
    std::string title;
    std::vector<Column> columns;
    std::vector<Row> rows;
    std::string remark = {}; ///< below the table
    std::string of = {};     ///< as of `Facts`

    [[nodiscard]] bool says_nothing() const {
        return columns.empty() || (rows.empty() && remark.empty());
    }
};

struct Remarks {
    std::string key;
    std::string title;
    std::vector<std::string> lines;
    std::string of = {}; ///< as of `Facts`
};

/// A figure beside an axis.
struct ChartTick {
    Number at;
    std::string shown;
};
/// A line across the whole plane, where its axis has `at`: shown as "3.5 %", in words "sells from 3.5 %".
struct ChartLine {
    Number at;
    std::string shown;
    std::string words;
};
/// From its first tick to its last; all points lie between these.
struct ChartAxis {
    std::string title;
    std::vector<ChartTick> ticks;
    std::optional<ChartLine> line = {};
};
struct ChartPoint {
    Number x;
    Number y;
    std::string label = {}; ///< beside the point; may be empty
};
struct ChartSeries {
    std::string name;
    std::vector<ChartPoint> points;
    bool is_joined = false; ///< in the order of its points
};
/// Figures on a plane, for the eye: they stand in tables as well, so a form that cannot draw leaves it out.
struct Chart {
    std::string key;
    std::string title;
    ChartAxis across;
    ChartAxis up;
    std::vector<ChartSeries> series;
    /// Above the plane on the left and right, below it on the left and right.
    std::array<std::string, 4> corners = {};
    std::string said = {};   ///< what one sees, for those who do not
    std::string remark = {}; ///< below it, for all
    /// Where there are no pictures it is set in letters: one series, not joined, and a line on each axis.
    bool is_lettered = false;
    std::string of = {}; ///< as of `Facts`
};

/// Its key is fixed: it never holds a name from the books nor a number that runs. A key is one section's, or
/// that of several sections of one kind which each say `of` what they are.
using Section = std::variant<Facts, Table, Remarks, Chart>;

struct Sheet {
    Sheet(std::string kind, std::string audience, std::vector<std::string> letterhead,
          std::string title, std::vector<Section> sections = {});
    Sheet(); // these stand in the half, so that including it costs little
    Sheet(Sheet const&);
    Sheet(Sheet&&) noexcept;
    Sheet& operator=(Sheet const&);
    Sheet& operator=(Sheet&&) noexcept;
    ~Sheet();

    std::string kind;                    ///< "quote", "cost"
    std::string audience;                ///< "client" or "maker"
    std::vector<std::string> letterhead; ///< the shop's name first
    std::string title;
    std::vector<Section> sections = {};
    Style style = {};
    Look look = {};
    std::string language = "en"; ///< of its words, BCP 47
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/paper/sheet.ipp>
#endif
