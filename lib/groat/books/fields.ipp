#pragma once

#include <groat/books/fields.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace groat {

GROAT_INLINE std::string_view kind_text(Node const& node) {
    switch (node.kind) {
    case Node::Kind::null: return "nothing";
    case Node::Kind::scalar: return "text";
    case Node::Kind::sequence: return "a list";
    case Node::Kind::mapping: return "a mapping";
    }
    return "";
}

GROAT_INLINE void expected(std::string_view what, Node const& node, Diagnostics& found,
                           std::string help) {
    if (node.is_null()) {
        if (!node.text.empty())
            help =
                fmt::format("a # begins a note: write \"{}\" with its quotation marks", node.text);
        else if (help.empty())
            help = "write it, or take the key out";
        found.error(node.where, "missing-value",
                    fmt::format("nothing stands here, but {} is expected", what), std::move(help));
    } else if (node.is_scalar())
        found.error(node.where, "wrong-kind",
                    fmt::format("{} is expected here, not '{}'", what, shortened(node.text, 32)),
                    std::move(help));
    else
        found.error(node.where, "wrong-kind",
                    fmt::format("{} is expected here, not {}", what, kind_text(node)),
                    std::move(help));
}

GROAT_INLINE FieldSearch::FieldSearch(Node const& node, Shape const& shape, Diagnostics& found)
    : node_(node), shape_(shape), found_(found), fields_(shape.keys.size()) {
    if (node.is_mapping())
        meet_strangers();
    else
        expected(fmt::format("a mapping for {}", shape.complaint), node, found,
                 "write it as 'key: value', or {key: value}");
    found_before_ = found.errors() + found.warnings();
}

GROAT_INLINE std::string FieldSearch::list_of_keys() const {
    std::string list;
    for (KeyShape const& key : shape_.keys) {
        if (!list.empty()) list += ", ";
        list += key.name;
    }
    return list;
}

GROAT_INLINE bool has_form_of(Node const& node, Value const& value) {
    for (Form const& form : value.all()) {
        bool const is_mapping = form.kind == ValueKind::names || form.kind == ValueKind::mapping;
        bool const is_list = form.kind == ValueKind::list;
        if (is_mapping ? node.is_mapping() : (is_list ? node.is_sequence() : node.is_scalar()))
            return true;
    }
    return false;
}

GROAT_INLINE std::string FieldSearch::help_on(std::size_t stranger, bool may_guess) {
    std::string_view const text = node_.keys[stranger].text;
    Node const& value = node_.items[stranger];
    auto const stands_for = [&](std::size_t key, bool is_same_value) {
        Field& field = fields_[key];
        if (field.at != none) return;
        field.is_misnamed = true;
        if (is_same_value && has_form_of(value, shape_.keys[key].value)) field.at = stranger;
    };
    if (Synonym const* const synonym = shape_.find_synonym(text)) {
        if (!synonym->key.empty()) stands_for(shape_.find(synonym->key), synonym->advice.empty());
        return synonym->advice.empty() ? fmt::format("here it is called '{}'", synonym->key)
                                       : std::string(synonym->advice);
    }
    if (!may_guess) return {};
    std::vector<std::string_view> names;
    for (KeyShape const& key : shape_.keys) names.push_back(key.name);
    if (auto const near = nearest_name(text, names)) {
        stands_for(shape_.find(*near), true);
        return fmt::format("did you mean '{}'?", *near);
    }
    if (value.is_null())
        return "a comma divides keys here: put text that contains one into quotation marks, and write "
               "decimals with a point";
    return fmt::format("{} may have: {}", shape_.complaint, list_of_keys());
}

GROAT_INLINE void FieldSearch::meet_strangers() {
    std::vector<std::size_t> strangers;
    for (std::size_t i = 0; i < node_.keys.size(); ++i) {
        std::size_t const key = shape_.find(node_.keys[i].text);
        if (key == Shape::none)
            strangers.push_back(i);
        else
            fields_[key].at = i;
    }
    // Suggestions cost time: a mapping of very many unknown keys is not a slip of the finger.
    constexpr std::size_t most_suggestions = 100;
    for (std::size_t i = 0; i < strangers.size(); ++i) {
        Key const& key = node_.keys[strangers[i]];
        found_.error(key.where, "unknown-key",
                     fmt::format("unknown key '{}'", shortened(key.text, 48)),
                     help_on(strangers[i], i < most_suggestions));
    }
}

GROAT_INLINE Node const* FieldSearch::at(std::size_t key, bool is_needed,
                                         std::string_view example) {
    Field& field = fields_[key];
    field.is_asked = true;
    if (field.at != none) return &node_.items[field.at];
    if (is_needed && is_mapping() && !field.is_misnamed) missing_.push_back({key, example});
    return nullptr;
}

GROAT_INLINE void FieldSearch::read_bound(void* object, void const* owner, Reading const& reading) {
    for (std::size_t i = 0; i < shape_.keys.size(); ++i) {
        KeyShape const& key = shape_.keys[i];
        if (key.value.owner != owner) continue;
        if (Node const* const node = at(i, key.need == KeyNeed::must, key.example))
            key.value.put(object, *node, key, reading);
    }
}

GROAT_INLINE Span FieldSearch::place_of(std::size_t key) const {
    std::size_t const at = fields_[key].at;
    return at == none ? where() : node_.keys[at].where;
}

GROAT_INLINE Span last_place(Node const& node) {
    return node.items.empty() ? node.where : last_place(node.items.back());
}

/// A misspelt key is one error: whether its value is one of the key that was meant is not judged.
GROAT_INLINE void FieldSearch::spare_misnamed() {
    for (Field const& field : fields_) {
        if (!field.is_misnamed || field.at == none) continue;
        Span const first = node_.keys[field.at].where;
        Span last = last_place(node_.items[field.at]);
        last.column += last.length;
        auto const place = [](Span const& span) { return std::pair(span.line, span.column); };
        found_.take_back(found_before_, [&](Diagnostic const& each) {
            return each.where.file == first.file && place(first) <= place(each.where) &&
                   place(each.where) <= place(last) && each.code != Code("unknown-key");
        });
    }
}

GROAT_INLINE void FieldSearch::refuse_both(std::size_t one, std::size_t other, std::string help) {
    if (place_of(one).line > place_of(other).line ||
        (place_of(one).line == place_of(other).line &&
         place_of(one).column > place_of(other).column))
        std::swap(one, other);
    std::string_view const names[] = {shape_.keys[one].name, shape_.keys[other].name};
    found_.add({Severity::error,
                "not-both",
                fmt::format("'{}' and '{}' cannot both stand", names[0], names[1]),
                place_of(other),
                {{fmt::format("'{}' is here", names[0]), place_of(one)}},
                std::move(help)});
}

GROAT_INLINE void FieldSearch::check(std::size_t at, Condition const& condition) {
    KeyShape const& key = shape_.keys[at];
    bool const is_here = fields_[at].at != none;
    switch (condition.kind) {
    case Condition::Kind::none: return;
    case Condition::Kind::with:
        if (is_here && !stands(condition.other) &&
            !fields_[shape_.find(condition.other)].is_misnamed) {
            KeyShape const& other = shape_.keys[shape_.find(condition.other)];
            fields_[at].is_asked = true; // what is said of it is said
            found_.error(place_of(at), "key-alone",
                         fmt::format("'{}' means nothing without '{}'", key.name, other.name),
                         fmt::format("add '{}: {}', or take it out", other.name, other.example));
        }
        return;
    case Condition::Kind::without:
        if (is_here && stands(condition.other))
            refuse_both(at, shape_.find(condition.other), "keep one of them");
        return;
    case Condition::Kind::unless:
        if (!is_here && !stands(condition.other) && !fields_[at].is_misnamed &&
            !fields_[shape_.find(condition.other)].is_misnamed)
            missing_.push_back({at, {}});
        return;
    case Condition::Kind::one_of:
        for (std::size_t before = 0; is_here && before < at; ++before)
            for (Condition const& same : shape_.keys[before].conditions)
                if (same.kind == condition.kind && same.other == condition.other &&
                    fields_[before].at != none)
                    return refuse_both(before, at,
                                       fmt::format("keep one of the {}", condition.other));
    }
}

GROAT_INLINE void FieldSearch::check_conditions() {
    for (std::size_t i = 0; i < fields_.size(); ++i)
        for (Condition const& condition : shape_.keys[i].conditions) check(i, condition);
}

GROAT_INLINE void FieldSearch::close() {
    spare_misnamed();
    if (is_mapping()) check_conditions();
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        Field const& field = fields_[i];
        if (field.is_asked || field.at == none || field.is_misnamed) continue;
        found_.error(place_of(i), "unknown-key",
                     fmt::format("unknown key '{}'", shortened(shape_.keys[i].name, 48)),
                     fmt::format("{} may have: {}", shape_.complaint, list_of_keys()));
    }
    auto const by_key = [](Missing const& a, Missing const& b) { return a.key < b.key; };
    auto const is_same = [](Missing const& a, Missing const& b) { return a.key == b.key; };
    std::stable_sort(missing_.begin(), missing_.end(), by_key);
    missing_.erase(std::unique(missing_.begin(), missing_.end(), is_same), missing_.end());
    for (Missing const& each : missing_) {
        KeyShape const& key = shape_.keys[each.key];
        std::string names = fmt::format("'{}'", key.name);
        for (Condition const& condition : key.conditions)
            if (condition.kind == Condition::Kind::unless && !stands(condition.other))
                names += fmt::format(" or '{}'", condition.other);
        found_.error(where(), "missing-key",
                     fmt::format("{} is missing from {}", names, shape_.complaint),
                     fmt::format("add '{}: {}'", key.name,
                                 each.example.empty() ? key.example : each.example));
    }
}

GROAT_INLINE bool is_told_by(Node const& node, std::string_view key, std::string_view other_key) {
    auto const stands = [&](std::string_view wanted) {
        return std::any_of(node.keys.begin(), node.keys.end(),
                           [&](Key const& each) { return each.text == wanted; });
    };
    if (stands(key)) return true;
    if (stands(other_key)) return false;
    std::string_view const both[] = {key, other_key};
    return std::any_of(node.keys.begin(), node.keys.end(),
                       [&](Key const& each) { return nearest_name(each.text, both) == key; });
}

} // namespace groat
