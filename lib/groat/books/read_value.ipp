#pragma once

#include <groat/books/read_value.hpp>

#include <groat/base/linkage.hpp>

#include <fmt/format.h>

namespace groat {

namespace read_value_detail {

/// How a finding calls a value: by its key, in quotation marks.
inline std::string called(KeyShape const& key) { return fmt::format("'{}'", key.name); }

/// The form that is written as text.
inline Form const& text_form(KeyShape const& key) {
    for (Form const& form : key.value.all())
        if (form.kind != ValueKind::list && form.kind != ValueKind::names &&
            form.kind != ValueKind::mapping)
            return form;
    throw std::logic_error("a key that takes no text");
}

inline std::optional<Quantity> quantity(Node const& node, KeyShape const& key,
                                        Reading const& reading) {
    Form const& form = text_form(key);
    return read_quantity(
        &node, {called(key), form.dimensions, key.example, form.least == Least::zero}, reading);
}

GROAT_INLINE KeyShape key_of_each(KeyShape const& key, Form const& form) {
    KeyShape each = key;
    each.value = *form.of;
    return each;
}

GROAT_INLINE std::string list_in_words(Form const& list) {
    std::string_view const each = list.of->forms[0].says;
    return each.empty() ? "a list" : std::string(each);
}

GROAT_INLINE std::string names_in_words(Form const& names) {
    return fmt::format("a mapping of {}", names.says);
}

} // namespace read_value_detail

GROAT_INLINE Form const* form_of(KeyShape const& key, ValueKind kind) {
    for (Form const& form : key.value.all())
        if (form.kind == kind) return &form;
    return nullptr;
}

GROAT_INLINE bool read_value(std::string& text, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    bool const is_name = form_of(key, ValueKind::name) != nullptr;
    return read_value_detail::take(text,
                                   is_name ? read_name(&node, reading) : read_text(&node, reading));
}

GROAT_INLINE bool read_value(Reference& name, Node const& node, KeyShape const&,
                             Reading const& reading) {
    name = read_reference(&node, reading);
    return name.is_given();
}

GROAT_INLINE bool read_value(bool& answer, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    Form const* const words = form_of(key, ValueKind::word);
    if (words == nullptr) return read_value_detail::take(answer, read_yes_no(&node, reading));
    auto const index = read_word(&node, words->words, reading);
    if (index) answer = *index == 1;
    return index.has_value();
}

GROAT_INLINE bool read_value(Date& date, Node const& node, KeyShape const&,
                             Reading const& reading) {
    return read_value_detail::take(date, read_date(&node, reading));
}

GROAT_INLINE bool read_value(Days& days, Node const& node, KeyShape const&,
                             Reading const& reading) {
    return read_value_detail::take(days, read_days(&node, reading));
}

GROAT_INLINE bool read_value(int& days, Node const& node, KeyShape const&, Reading const& reading) {
    auto const read = read_days(&node, reading);
    if (read) days = static_cast<int>(read->count());
    return read.has_value();
}

GROAT_INLINE bool read_value(Number& number, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    namespace parts = read_value_detail;
    Form const& form = parts::text_form(key);
    if (form.dimensions.empty())
        return parts::take(number, form.least == Least::zero
                                       ? read_not_negative(&node, parts::called(key), reading)
                                       : read_positive(&node, parts::called(key), reading));
    auto const quantity = parts::quantity(node, key, reading);
    if (!quantity) return false;
    number = quantity->is(Dimension::time) ? quantity->amount / 60 : quantity->amount;
    return true;
}

GROAT_INLINE bool read_value(Integer& count, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    namespace parts = read_value_detail;
    auto const quantity = parts::quantity(node, key, reading);
    if (!quantity || !is_whole_count(node, *quantity, parts::called(key), reading)) return false;
    count = quantity->amount.numerator();
    return true;
}

GROAT_INLINE bool read_value(Quantity& quantity, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    return read_value_detail::take(quantity, read_value_detail::quantity(node, key, reading));
}

GROAT_INLINE bool read_value(Density& density, Node const& node, KeyShape const&,
                             Reading const& reading) {
    auto read = read_scalar(&node, "a density", reading, [&](std::string_view text) {
        return parse_bounded(text, reading, parse_density);
    });
    if (!read) return false;
    density = *std::move(read);
    density.origin = node.where;
    return true;
}

GROAT_INLINE bool read_value(Money& money, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    namespace parts = read_value_detail;
    Form const& form = parts::text_form(key);
    bool const is_step = form.least == Least::above_zero;
    return parts::take(money, form.is_paid ? read_coins(&node, parts::called(key), is_step, reading)
                                           : read_money(&node, reading));
}

GROAT_INLINE bool read_value(MoneyRate& rate, Node const& node, KeyShape const& key,
                             Reading const& reading) {
    Dimension const dimension = read_value_detail::text_form(key).dimensions[0];
    return read_value_detail::take(rate, read_money_rate(&node, dimension, reading));
}

} // namespace groat
