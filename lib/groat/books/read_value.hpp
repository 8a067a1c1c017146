/// Values into the members that their keys are bound to (bind.hpp): a way of reading for each type of member.
/// What a value has to be, and what its key is called, stands in its declaration; a finding says it in these words.
#pragma once

#include <groat/books/scalars.hpp>

#include <optional>
#include <stdexcept>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

namespace groat {

/// Each gives back whether there is a value now; where there is none, what stood there before stays.
bool read_value(std::string& text, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Reference& name, Node const& node, KeyShape const& key, Reading const& reading);
/// Yes or no; or two words, of which the second is `true`.
bool read_value(bool& answer, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Date& date, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Days& days, Node const& node, KeyShape const& key, Reading const& reading);
/// A number; of a quantity its grams, its minutes, or how many.
bool read_value(Number& number, Node const& node, KeyShape const& key, Reading const& reading);
/// A number of days.
bool read_value(int& days, Node const& node, KeyShape const& key, Reading const& reading);
/// A whole number of things.
bool read_value(Integer& count, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Quantity& quantity, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Density& density, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(Money& money, Node const& node, KeyShape const& key, Reading const& reading);
bool read_value(MoneyRate& rate, Node const& node, KeyShape const& key, Reading const& reading);
/// A percentage of a kind.
template <class Kind>
bool read_value(Rate<Kind>& rate, Node const& node, KeyShape const& key, Reading const& reading);
/// One of the words of its key, which stand in the order of the enumeration.
template <class E>
requires std::is_enum_v<E>
bool read_value(E& value, Node const& node, KeyShape const& key, Reading const& reading);
template <class T>
bool read_value(std::optional<T>& value, Node const& node, KeyShape const& key,
                Reading const& reading);
/// A list, or the one that stands for a list of one; or a mapping of names.
template <class T>
bool read_value(std::vector<T>& all, Node const& node, KeyShape const& key, Reading const& reading);
/// A mapping whose keys are bound to members of `T`, and which has nothing else to look at.
template <class T>
requires std::is_class_v<T>
bool read_value(T& object, Node const& node, KeyShape const& key, Reading const& reading);

/// A mapping, or what stands alone for one that says no more than `alone`.
/// Example  `baker: 55 min` for `baker: {time: 55 min}`
template <auto alone, class T>
bool read_short(T& object, Node const& node, KeyShape const& key, Reading const& reading);

/// The form of a key's value that is of this kind, or null.
[[nodiscard]] Form const* form_of(KeyShape const& key, ValueKind kind);

/// Calls `read(key, value)` for each entry of a mapping by name.
template <class Read>
void each_named(Node const* node, std::string_view what, Reading const& reading, Read read) {
    if (node == nullptr) return;
    if (!node->is_mapping())
        return expected(what, *node, reading.found, "write a line 'name: ...' for each");
    for (std::size_t i = 0; i < node->items.size(); ++i)
        if (is_name(node->keys[i], reading)) read(node->keys[i], node->items[i]);
}

namespace read_value_detail {

template <class T> bool take(T& target, std::optional<T> value) {
    if (!value) return false;
    target = *std::move(value);
    return true;
}

/// Puts a name that is a key into what it names.
template <class T> void put_name(T& object, Key const& key) {
    if constexpr (requires { object.name; })
        object.name = key.text;
    else if constexpr (requires { object.item; })
        object.item = {key.text, key.where};
    else if constexpr (requires { object.supply; })
        object.supply = {key.text, key.where};
    else if constexpr (requires { object.role; })
        object.role = {key.text, key.where};
    else
        throw std::logic_error("a name of what has none");
    if constexpr (requires { object.origin; }) object.origin = key.where;
}

/// That of the values in a list or behind names.
[[nodiscard]] KeyShape key_of_each(KeyShape const& key, Form const& form);
[[nodiscard]] std::string list_in_words(Form const& list);
[[nodiscard]] std::string names_in_words(Form const& names);

} // namespace read_value_detail

template <class Kind>
bool read_value(Rate<Kind>& rate, Node const& node, KeyShape const&, Reading const& reading) {
    return read_value_detail::take(rate, read_rate<Rate<Kind>>(&node, reading));
}

template <class E>
requires std::is_enum_v<E>
bool read_value(E& value, Node const& node, KeyShape const& key, Reading const& reading) {
    auto const index = read_word(&node, form_of(key, ValueKind::word)->words, reading);
    if (index) value = static_cast<E>(*index);
    return index.has_value();
}

template <class T>
bool read_value(std::optional<T>& value, Node const& node, KeyShape const& key,
                Reading const& reading) {
    T read{};
    if (!read_value(read, node, key, reading)) return false;
    value = std::move(read);
    return true;
}

template <class T>
bool read_value(std::vector<T>& all, Node const& node, KeyShape const& key,
                Reading const& reading) {
    namespace parts = read_value_detail;
    all.clear();
    if (Form const* const names = form_of(key, ValueKind::names)) {
        KeyShape each = parts::key_of_each(key, *names);
        each_named(&node, parts::names_in_words(*names), reading,
                   [&](Key const& name, Node const& value) {
                       each.name = name.text;
                       T one{};
                       parts::put_name(one, name);
                       (void)read_value(one, value, each, reading);
                       all.push_back(std::move(one));
                   });
        return true;
    }
    Form const& list = *form_of(key, ValueKind::list);
    KeyShape const each = parts::key_of_each(key, list);
    for (Node const& value : read_list(&node, parts::list_in_words(list), reading)) {
        T one{};
        if (read_value(one, value, each, reading)) all.push_back(std::move(one));
    }
    return true;
}

namespace read_value_detail {

template <class T>
bool read_mapping(T& object, Node const& node, KeyShape const& key, Reading const& reading) {
    FieldSearch fields(node, *form_of(key, ValueKind::mapping)->shape, reading.found);
    if constexpr (requires { object.origin; })
        if (object.origin.line == 0) object.origin = fields.where();
    fields.read_into(object, reading);
    fields.close();
    return fields.is_mapping();
}

} // namespace read_value_detail

template <class T>
requires std::is_class_v<T>
bool read_value(T& object, Node const& node, KeyShape const& key, Reading const& reading) {
    return read_value_detail::read_mapping(object, node, key, reading);
}

template <auto alone, class T>
bool read_short(T& object, Node const& node, KeyShape const& key, Reading const& reading) {
    if (node.is_mapping()) return read_value_detail::read_mapping(object, node, key, reading);
    return read_value(object.*alone, node, key, reading);
}

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_value.ipp>
#endif
