/// What may stand on a sheet, as data: its sections, and the members of each with unit and meaning. Sheets take
/// the keys of their columns and facts from here, and the schema of `--as json` is written from it.
///
/// A new column is a line in the table of its section (sheets/shape_*.hpp) and a cell in its sheet; `write_keys`
/// then writes the schema anew.
#pragma once

#include <groat/paper/sheet.hpp>

#include <cstddef>
#include <initializer_list>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// The schema that every document names and keeps to.
inline constexpr std::string_view sheet_schema = "urn:groat:sheet:2";

/// What a member is: one of a few things, put together with `|`.
struct MemberValue {
    enum class Kind {
        none, ///< null: an empty cell
        words,
        day,
        currency,
        money,
        percent,
        count,
        grams,
        minutes,
        hours,
        kilowatt_hours,
        points,
        amount, ///< pieces, grams or millilitres
        mass,   ///< in the unit of its column
        number, ///< with no unit
        figure, ///< in any unit
        names   ///< a list of words, for programs alone
    };
    unsigned kinds = 0;                          ///< a bit for each
    std::span<std::string_view const> only = {}; ///< of words: the only ones there are

    [[nodiscard]] static constexpr unsigned bit(Kind kind) {
        return 1u << static_cast<unsigned>(kind);
    }
    [[nodiscard]] constexpr bool may_be(Kind kind) const { return (kinds & bit(kind)) != 0; }
    /// Set left, as words and days are; figures are set right.
    [[nodiscard]] constexpr bool is_read() const {
        return (kinds & ~(bit(Kind::words) | bit(Kind::day) | bit(Kind::none))) == 0;
    }
};
[[nodiscard]] constexpr MemberValue operator|(MemberValue left, MemberValue const& right) {
    left.kinds |= right.kinds;
    if (!right.only.empty()) left.only = right.only;
    return left;
}

enum class Presence {
    always,
    sometimes ///< not on each sheet of its kind
};

/// A fact or a column.
struct MemberShape {
    std::string_view key;
    MemberValue value;
    std::string_view meaning; ///< a few words
    Presence presence = Presence::always;
};

/// What names a row: a number from 1 on, one of some words, or a name from the books.
struct RowKeyShape {
    bool is_there = false;
    bool is_number = false;
    std::span<std::string_view const> words = {};
    std::string_view meaning = {}; ///< of a name
    Presence presence = Presence::always;
};
struct RowShape {
    std::span<std::string_view const> kinds; ///< "line", "subtotal", "total"
    RowKeyShape key = {};
};

/// A section of a sheet. Several of its kind each say `of` what they are.
struct SectionShape {
    enum class Kind { facts, table, remarks };
    std::string_view key;
    Kind kind;
    std::string_view meaning;
    std::span<MemberShape const> members = {};
    RowShape rows = {};
    std::string_view of = {}; ///< what each of several is about; empty where there is one
    bool has_entries = false; ///< where it stands it is not empty

    /// The place of a member, or `none`.
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    [[nodiscard]] constexpr std::size_t find(std::string_view member) const {
        for (std::size_t i = 0; i < members.size(); ++i)
            if (members[i].key == member) return i;
        return none;
    }
};

struct SheetShape {
    struct Section {
        SectionShape const* shape;
        Presence presence = Presence::always;
    };
    std::string_view name; ///< of its definition in the schema
    std::string_view kind;
    std::string_view audience;
    std::string_view title;
    std::string_view meaning;
    std::span<Section const> sections;
};

/// A member of a section, looked up when the program is compiled: one that is not declared does not compile.
template <SectionShape const& shape> class MemberOf {
public:
    template <std::size_t N>
    consteval MemberOf(char const (&key)[N]) // NOLINT: a literal reads as what it names
        : MemberOf(std::string_view(key, N - 1)) {}
    consteval MemberOf(std::string_view key) // NOLINT: so does a word of a table
        : index_(shape.find(key)) {
        if (index_ == SectionShape::none) throw std::logic_error("no such member");
    }
    /// Of a key that is only known when the program runs.
    /// Throws   std::logic_error where it is not declared
    [[nodiscard]] static MemberOf named(std::string_view key) {
        std::size_t const index = shape.find(key);
        if (index == SectionShape::none)
            throw std::logic_error("no member of " + std::string(shape.key) + " is called " +
                                   std::string(key));
        return MemberOf(index, 0);
    }
    [[nodiscard]] MemberShape const& operator*() const { return shape.members[index_]; }
    [[nodiscard]] MemberShape const* operator->() const { return &shape.members[index_]; }

private:
    MemberOf(std::size_t index, int) : index_(index) {}
    std::size_t index_;
};

/// A declared column with what stands above it.
template <SectionShape const& shape> struct ColumnOf {
    MemberOf<shape> member;
    std::string title = {};

    operator Column() const { // NOLINT: a declared column is a column
        return {std::string(member->key), title, member->value.is_read()};
    }
};

/// A table of declared columns.
/// Example  table_of<shape>("Prices", {{"item"}, {"price", "Now"}})
template <SectionShape const& shape>
[[nodiscard]] Table table_of(std::string title, std::initializer_list<ColumnOf<shape>> columns) {
    static_assert(shape.kind == SectionShape::Kind::table);
    Table table{std::string(shape.key), std::move(title), {}, {}, {}};
    for (ColumnOf<shape> const& column : columns) table.columns.push_back(column);
    return table;
}
/// A column more.
template <SectionShape const& shape> void add_column(Table& table, ColumnOf<shape> const& column) {
    table.columns.push_back(column);
}

/// A column that draws the figures of another as lengths. It is for the eye alone, so it is no member.
[[nodiscard]] inline Column bar_column() { return {"bar", {}, false, true}; }

/// A declared fact.
template <SectionShape const& shape> struct FactOf {
    MemberOf<shape> member;
    std::string label;
    Cell value;

    operator Fact() const { // NOLINT: a declared fact is a fact
        return {std::string(member->key), label, value};
    }
};

/// What programs read on a row beside its cells.
/// Example  tell<shape>(row, "supplier", supplier.name)
template <SectionShape const& shape>
void tell(Row& row, MemberOf<shape> member, std::variant<Cell, std::vector<std::string>> value) {
    row.told.push_back({std::string(member->key), std::move(value)});
}

/// Declared facts, in the order in which they are added.
template <SectionShape const& shape> class FactsOf {
public:
    explicit FactsOf(std::string title = {}, std::string of = {})
        : facts_{std::string(shape.key), std::move(title), {}, std::move(of)} {
        static_assert(shape.kind == SectionShape::Kind::facts);
    }
    /// One without a value is left out.
    void add(MemberOf<shape> member, std::string label, Cell value) {
        if (!std::holds_alternative<std::monostate>(value))
            facts_.facts.push_back({std::string(member->key), std::move(label), std::move(value)});
    }
    /// For programs alone.
    void tell(MemberOf<shape> member, std::variant<Cell, std::vector<std::string>> value) {
        facts_.told.push_back({std::string(member->key), std::move(value)});
    }
    [[nodiscard]] bool says(std::string_view label) const {
        for (Fact const& fact : facts_.facts)
            if (fact.label == label) return true;
        return false;
    }
    operator Facts() const { return facts_; } // NOLINT: what it was made for

private:
    Facts facts_;
};
/// Example  facts_of<shape>("", {{"date", "Prices of", day}})
template <SectionShape const& shape>
[[nodiscard]] Facts facts_of(std::string title, std::initializer_list<FactOf<shape>> facts) {
    FactsOf<shape> result(std::move(title));
    for (FactOf<shape> const& each : facts) result.add(each.member, each.label, each.value);
    return result;
}

/// Declared remarks.
template <SectionShape const& shape>
[[nodiscard]] Remarks remarks_of(std::string title, std::vector<std::string> lines,
                                 std::string of = {}) {
    static_assert(shape.kind == SectionShape::Kind::remarks);
    return {std::string(shape.key), std::move(title), std::move(lines), std::move(of)};
}

/// Words to declare sheets in.
namespace sheet_shapes {

[[nodiscard]] constexpr MemberValue just(MemberValue::Kind kind) {
    return {MemberValue::bit(kind), {}};
}
inline constexpr MemberValue none = just(MemberValue::Kind::none);
inline constexpr MemberValue some_words = just(MemberValue::Kind::words);
inline constexpr MemberValue a_day = just(MemberValue::Kind::day);
inline constexpr MemberValue a_currency = just(MemberValue::Kind::currency);
inline constexpr MemberValue some_money = just(MemberValue::Kind::money);
inline constexpr MemberValue a_percentage = just(MemberValue::Kind::percent);
inline constexpr MemberValue a_count = just(MemberValue::Kind::count);
inline constexpr MemberValue a_number = just(MemberValue::Kind::number);
inline constexpr MemberValue some_grams = just(MemberValue::Kind::grams);
inline constexpr MemberValue some_minutes = just(MemberValue::Kind::minutes);
inline constexpr MemberValue some_hours = just(MemberValue::Kind::hours);
inline constexpr MemberValue some_energy = just(MemberValue::Kind::kilowatt_hours);
inline constexpr MemberValue some_points = just(MemberValue::Kind::points);
inline constexpr MemberValue an_amount = just(MemberValue::Kind::amount);
inline constexpr MemberValue a_mass = just(MemberValue::Kind::mass);
inline constexpr MemberValue a_figure = just(MemberValue::Kind::figure);
inline constexpr MemberValue some_names = just(MemberValue::Kind::names);
[[nodiscard]] constexpr MemberValue one_of(std::span<std::string_view const> some) {
    return {MemberValue::bit(MemberValue::Kind::words), some};
}

inline constexpr Presence sometimes = Presence::sometimes;

inline constexpr std::string_view row_kinds[] = {"line", "subtotal", "total"};
inline constexpr std::string_view line_and_total[] = {"line", "total"};
inline constexpr std::span<std::string_view const> only_lines{row_kinds, 1};
inline constexpr std::span<std::string_view const> lines_and_subtotals{row_kinds, 2};
inline constexpr std::span<std::string_view const> subtotals_and_total{row_kinds + 1, 2};
inline constexpr std::span<std::string_view const> lines_and_total{line_and_total};
inline constexpr std::span<std::string_view const> all_rows{row_kinds};

[[nodiscard]] constexpr RowKeyShape a_row_number(std::span<std::string_view const> or_words = {}) {
    return {true, true, or_words, {}};
}
[[nodiscard]] constexpr RowKeyShape one_key_of(std::span<std::string_view const> some) {
    return {true, false, some, {}};
}
[[nodiscard]] constexpr RowKeyShape a_row_name(std::string_view meaning) {
    return {true, false, {}, meaning};
}
[[nodiscard]] constexpr RowKeyShape sometimes_there(RowKeyShape key) {
    key.presence = Presence::sometimes;
    return key;
}

[[nodiscard]] constexpr SectionShape some_facts(std::string_view key, std::string_view meaning,
                                                std::span<MemberShape const> members) {
    return {key, SectionShape::Kind::facts, meaning, members};
}
[[nodiscard]] constexpr SectionShape a_table(std::string_view key, std::string_view meaning,
                                             std::span<MemberShape const> members, RowShape rows) {
    return {key, SectionShape::Kind::table, meaning, members, rows};
}
[[nodiscard]] constexpr SectionShape some_remarks(std::string_view key, std::string_view meaning) {
    return {key, SectionShape::Kind::remarks, meaning};
}
/// The same where several stand on a sheet, each `of` something.
[[nodiscard]] constexpr SectionShape one_for_each(std::string_view of, SectionShape shape) {
    shape.of = of;
    return shape;
}
/// The same where it never stands empty.
[[nodiscard]] constexpr SectionShape not_empty(SectionShape shape) {
    shape.has_entries = true;
    return shape;
}

} // namespace sheet_shapes

} // namespace groat
