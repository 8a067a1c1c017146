/// What may stand in the books, as data: the keys of a mapping, each with its value, an example and its
/// meaning. Readers take keys from here (fields.hpp), and so do the schema, the manual and `groat help KEY`.
///
/// A new key is a line in the table of its mapping (shape_*.hpp), which names the member that its value goes to
/// (bind.hpp); `write_keys` then writes schema and manual anew.
#pragma once

#include <groat/measure/dimension.hpp>

#include <cstddef>
#include <iterator>
#include <span>
#include <stdexcept>
#include <string_view>

namespace groat {

struct KeyShape;
struct Node;
struct Reading;
struct Shape;
struct Value;

enum class ValueKind {
    text,       ///< text or a number, as it is written
    name,       ///< the same, on one line
    number,     ///< the same, and it is a number: money, a count, minutes
    measured,   ///< a number with its unit
    percentage, ///< a number with its percent sign
    date,
    yes_no,
    word,    ///< one of some words
    nothing, ///< the key alone
    list,    ///< of values
    names,   ///< a mapping of names to values
    mapping  ///< with keys of its own
};

/// What a number, an amount or a quantity has to be.
enum class Least { above_zero, zero };

/// One form that a value may have.
struct Form {
    ValueKind kind = ValueKind::text;
    std::string_view says = {}; ///< "a mass or a volume"; of a mapping of names, what the names are
    std::span<std::string_view const> words = {}; ///< of a word; the only names that there are
    Shape const* shape = nullptr;                 ///< of a mapping
    Value const* of = nullptr;                    ///< of a list and of a mapping of names
    std::span<Dimension const> dimensions = {};   ///< of a quantity; of a rate, what it is for
    Least least = Least::above_zero;              ///< of a number, a count, a quantity
    bool is_paid = false;                         ///< of money: a whole number of minor units
};

/// Puts a value where it belongs: into a member of `object`.
using Put = void (*)(void* object, Node const& node, KeyShape const& key, Reading const& reading);

/// What stands behind a key: one of a few forms.
struct Value {
    static constexpr std::size_t most = 4;
    Form forms[most] = {};
    std::size_t count = 0;
    Put put = nullptr;           ///< null: its reader asks for it
    void const* owner = nullptr; ///< tells the type that `put` puts it into

    [[nodiscard]] constexpr std::span<Form const> all() const { return {forms, count}; }
};
/// Either of both.
[[nodiscard]] constexpr Value operator|(Value left, Value const& right) {
    for (Form const& form : right.all()) {
        if (left.count == Value::most) throw std::logic_error("a value of too many forms");
        left.forms[left.count++] = form;
    }
    return left;
}

/// How a key goes with another of the same mapping: what the schema says, `Fields::close` holds.
struct Condition {
    enum class Kind {
        none,
        with,    ///< it stands only where the other does
        without, ///< not both of them may stand
        unless,  ///< it must stand unless the other does
        one_of   ///< of all that say the same, one may stand; `other` names what they are
    };
    Kind kind = Kind::none;
    std::string_view other = {};
};

enum class KeyNeed { may, must };

struct KeyShape {
    std::string_view name;
    KeyNeed need;
    Value value;
    std::string_view example; ///< what to type behind it
    std::string_view meaning; ///< one sentence
    Condition conditions[2] = {};
};

/// A word of the trade that stands for a key, and is answered by name.
struct Synonym {
    std::string_view word;
    std::string_view key; ///< what it is called here; empty where it has no place in this mapping
    std::string_view advice =
        {}; ///< what to do where the key takes another value, or there is none
};

/// The keys of one kind of mapping. `name` is unique; `complaint` words what is wrong with one.
struct Shape {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    std::string_view name;      ///< "offer"
    std::string_view complaint; ///< "this offer"
    std::span<KeyShape const> keys;
    std::span<Synonym const> synonyms = {};

    [[nodiscard]] constexpr std::size_t find(std::string_view key) const;
    [[nodiscard]] constexpr Synonym const* find_synonym(std::string_view word) const;
};

/// A key of a shape, looked up when the program is compiled: one that is not declared does not compile.
template <Shape const& shape> class KeyOf {
public:
    template <std::size_t N>
    consteval KeyOf(char const (&key)[N]) // NOLINT: a literal reads as what it names
        : index_(shape.find(std::string_view(key, N - 1))) {
        if (index_ == Shape::none) throw std::logic_error("no such key");
    }
    [[nodiscard]] constexpr std::size_t index() const { return index_; }
    [[nodiscard]] constexpr std::string_view name() const { return shape.keys[index_].name; }

private:
    std::size_t index_;
};

/// The words that may stand behind a key.
/// Example  `words_of<shapes::ingredient>("buy")`  ->  as used, whole packs, metered
template <Shape const& shape>
[[nodiscard]] constexpr std::span<std::string_view const> words_of(KeyOf<shape> key);

/// Values with a form each, to be put together with `|`.
namespace shapes {

[[nodiscard]] constexpr Value written(ValueKind kind, std::string_view says) {
    return {{{kind, says, {}, nullptr, nullptr}}, 1};
}
[[nodiscard]] constexpr Value one_of(std::span<std::string_view const> words) {
    return {{{ValueKind::word, {}, words, nullptr, nullptr}}, 1};
}
/// A number with a unit of one of these dimensions.
[[nodiscard]] constexpr Value quantity(ValueKind kind, std::string_view says,
                                       std::span<Dimension const> dimensions,
                                       Least least = Least::above_zero) {
    return {{{kind, says, {}, nullptr, nullptr, dimensions, least}}, 1};
}
[[nodiscard]] constexpr Value money(Least least, bool is_paid) {
    Form const form{
        ValueKind::number, "an amount of money", {}, nullptr, nullptr, {}, least, is_paid};
    return {{form}, 1};
}
/// `values` and `shape` have to live as long as the program.
[[nodiscard]] constexpr Value only_a_list_of(Value const& values) {
    return {{{ValueKind::list, {}, {}, nullptr, &values}}, 1};
}
/// One of them may stand for a list of one.
[[nodiscard]] constexpr Value list_of(Value const& values) {
    return values | only_a_list_of(values);
}
[[nodiscard]] constexpr Value names_to(std::string_view names, Value const& values,
                                       std::span<std::string_view const> only = {}) {
    return {{{ValueKind::names, names, only, nullptr, &values}}, 1};
}
[[nodiscard]] constexpr Value mapping(Shape const& shape) {
    return {{{ValueKind::mapping, {}, {}, &shape, nullptr}}, 1};
}
[[nodiscard]] constexpr Condition with(std::string_view other) {
    return {Condition::Kind::with, other};
}
[[nodiscard]] constexpr Condition without(std::string_view other) {
    return {Condition::Kind::without, other};
}
[[nodiscard]] constexpr Condition unless(std::string_view other) {
    return {Condition::Kind::unless, other};
}
[[nodiscard]] constexpr Condition one_of_these(std::string_view what) {
    return {Condition::Kind::one_of, what};
}

inline constexpr Dimension mass[] = {Dimension::mass};
inline constexpr Dimension mass_or_volume[] = {Dimension::mass, Dimension::volume};
inline constexpr Dimension count_or_mass[] = {Dimension::count, Dimension::mass};
inline constexpr Dimension what_is_bought[] = {Dimension::mass, Dimension::volume,
                                               Dimension::count};
inline constexpr Dimension pieces_only[] = {Dimension::count};
inline constexpr Dimension time[] = {Dimension::time};
inline constexpr Dimension distance[] = {Dimension::distance};
inline constexpr Dimension power[] = {Dimension::power};
inline constexpr Dimension energy[] = {Dimension::energy};

inline constexpr Value a_text = written(ValueKind::text, "text");
inline constexpr Value a_name = written(ValueKind::name, "a name");
inline constexpr Value a_date = written(ValueKind::date, "a date");
inline constexpr Value yes_or_no = written(ValueKind::yes_no, "yes or no");
inline constexpr Value some_days = written(ValueKind::number, "a number of days");
inline constexpr Value a_number = written(ValueKind::number, "a number");
inline constexpr Value some_minutes = quantity(ValueKind::number, "a number", {}, Least::zero);
inline constexpr Value a_count = quantity(ValueKind::number, "a count", pieces_only);
inline constexpr Value a_count_or_none =
    quantity(ValueKind::number, "a count", pieces_only, Least::zero);
inline constexpr Value some_money = money(Least::zero, false);
inline constexpr Value some_coins = money(Least::zero, true);
inline constexpr Value a_step_of_money = money(Least::above_zero, true);
inline constexpr Value a_percentage = written(ValueKind::percentage, "a percentage");
inline constexpr Value a_mass = quantity(ValueKind::measured, "a mass", mass);
inline constexpr Value a_mass_or_nothing =
    quantity(ValueKind::measured, "a mass", mass, Least::zero);
inline constexpr Value a_mass_or_volume =
    quantity(ValueKind::measured, "a mass or a volume", mass_or_volume);
inline constexpr Value a_count_or_mass =
    quantity(ValueKind::number, "a count or a mass", count_or_mass);
inline constexpr Value an_amount =
    quantity(ValueKind::number, "a mass, a volume or a count", what_is_bought);
inline constexpr Value an_amount_or_nothing =
    quantity(ValueKind::number, "a mass, a volume or a count", what_is_bought, Least::zero);
inline constexpr Value a_time = quantity(ValueKind::measured, "a time", time, Least::zero);
inline constexpr Value a_distance = quantity(ValueKind::measured, "a distance", distance);
inline constexpr Value a_distance_or_none =
    quantity(ValueKind::measured, "a distance", distance, Least::zero);
inline constexpr Value a_density =
    written(ValueKind::measured, "a density: the mass of a volume, or of a count");
inline constexpr Value money_per_hour = quantity(ValueKind::measured, "money for an hour", time);
inline constexpr Value money_per_energy =
    quantity(ValueKind::measured, "money for an amount of energy", energy);
inline constexpr Value money_per_distance =
    quantity(ValueKind::measured, "money for a distance", distance);
inline constexpr Value money_per_mass = quantity(ValueKind::measured, "money for a mass", mass);
inline constexpr Value a_currency = written(ValueKind::text, "the three letters of a currency");
inline constexpr Value a_language = written(ValueKind::text, "the tag of a language");
inline constexpr Value nothing = written(ValueKind::nothing, "nothing");
inline constexpr Value texts = list_of(a_text);
inline constexpr Value names = list_of(a_name);

inline constexpr KeyNeed must = KeyNeed::must;
inline constexpr KeyNeed may = KeyNeed::may;

} // namespace shapes

// ---------------------------------------------------------------------------------------------------

constexpr std::size_t Shape::find(std::string_view key) const {
    for (std::size_t i = 0; i < keys.size(); ++i)
        if (keys[i].name == key) return i;
    return none;
}

constexpr Synonym const* Shape::find_synonym(std::string_view word) const {
    for (Synonym const& each : synonyms)
        if (each.word == word) return &each;
    return nullptr;
}

template <Shape const& shape>
constexpr std::span<std::string_view const> words_of(KeyOf<shape> key) {
    for (Form const& form : shape.keys[key.index()].value.all())
        if (form.kind == ValueKind::word) return form.words;
    throw std::logic_error("a key without words");
}

} // namespace groat
