/// A mapping as a list of fields of a shape: a key that the shape does not know is an error before any value is
/// judged, so that a misspelt key never passes for one that was left out.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/base/name.hpp>
#include <groat/books/shape.hpp>
#include <groat/yaml/node.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat {

/// Reports that something else was expected at a node.
/// Example  `expected("a list", node, found, "- one")`  ->  "a list is expected here, not a mapping"
inline void expected(std::string_view what, Node const& node, Diagnostics& found,
                     std::string help = {});

/// The keys and values of one mapping while it is being read, by their index in a shape. This is what all
/// `Fields` share.
class FieldSearch {
public:
    FieldSearch(FieldSearch const&) = delete;
    FieldSearch& operator=(FieldSearch const&) = delete;

    [[nodiscard]] Span where() const { return node_.where; }
    [[nodiscard]] bool is_mapping() const { return node_.is_mapping(); }

    /// Reports what is missing, and what stands where nobody asks for it. To be called last.
    void close();

protected:
    FieldSearch(Node const& node, Shape const& shape, Diagnostics& found);

    Node const* at(std::size_t key, bool is_needed, std::string_view example);
    [[nodiscard]] Span place_of(std::size_t key) const;

private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    void meet_strangers();
    void spare_misnamed();
    /// What to say of a key that is not declared; takes note of which it stands for.
    std::string help_on(std::size_t stranger, bool may_guess);
    [[nodiscard]] std::string list_of_keys() const;

    struct Field {
        std::size_t at = none; ///< in the node
        bool is_asked = false;
        bool is_misnamed = false; ///< another word stands in its place, which is reported already
    };
    struct Missing {
        std::size_t key;
        std::string_view example;
    };
    Node const& node_;
    Shape const& shape_;
    Diagnostics& found_;
    std::vector<Field> fields_; ///< by the index of their key
    std::vector<Missing> missing_;
    std::size_t found_before_; ///< findings, when the keys had been looked at
};

/// The fields of a mapping of one shape.
///
///     Fields<shapes::offer> fields(node, found);
///     Node const* item = fields.at("item");       // reported where it is missing: it must stand
///     Node const* code = fields.at("code");       // null where it is absent
///     fields.close();
///
/// Keys are looked at when it is made, before any value is. One that the shape does not know is an error, and is
/// read as the key that was meant where that is plain, so that nothing follows from the slip. A node that is
/// no mapping is reported once; it then has no fields, and none is missed.
template <Shape const& shape> class Fields : public FieldSearch {
public:
    using Key = KeyOf<shape>;

    Fields(Node const& node, Diagnostics& found) : FieldSearch(node, shape, found) {}

    /// The value of a key, or null where it is absent, which is reported where it must stand.
    [[nodiscard]] Node const* at(Key key) {
        KeyShape const& declared = shape.keys[key.index()];
        return FieldSearch::at(key.index(), declared.need == KeyNeed::must, declared.example);
    }
    /// The same for a key that must stand here by what else stands; `example` is for here.
    [[nodiscard]] Node const* needed(Key key, std::string_view example = {}) {
        return FieldSearch::at(key.index(), true,
                               example.empty() ? shape.keys[key.index()].example : example);
    }
    /// The place of a key; that of the mapping where it is absent.
    [[nodiscard]] Span place_of(Key key) const { return FieldSearch::place_of(key.index()); }
};

/// Whether a mapping is of one shape rather than of another: `key`, which only the one has, stands in it or, where
/// `other_key` does not, is what someone meant who made a slip.
[[nodiscard]] bool is_told_by(Node const& node, std::string_view key, std::string_view other_key);

// ---------------------------------------------------------------------------------------------------

inline std::string_view kind_text(Node const& node) {
    switch (node.kind) {
    case Node::Kind::null: return "nothing";
    case Node::Kind::scalar: return "text";
    case Node::Kind::sequence: return "a list";
    case Node::Kind::mapping: return "a mapping";
    }
    return "";
}

inline void expected(std::string_view what, Node const& node, Diagnostics& found,
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

inline FieldSearch::FieldSearch(Node const& node, Shape const& shape, Diagnostics& found)
    : node_(node), shape_(shape), found_(found), fields_(shape.keys.size()) {
    if (node.is_mapping())
        meet_strangers();
    else
        expected(fmt::format("a mapping for {}", shape.complaint), node, found,
                 "write it as 'key: value', or {key: value}");
    found_before_ = found.errors() + found.warnings();
}

inline std::string FieldSearch::list_of_keys() const {
    std::string list;
    for (KeyShape const& key : shape_.keys) {
        if (!list.empty()) list += ", ";
        list += key.name;
    }
    return list;
}

/// Whether a value can be what is meant by a key, as far as its kind tells.
inline bool has_form_of(Node const& node, Value const& value) {
    for (Form const& form : value.all()) {
        bool const is_mapping = form.kind == ValueKind::names || form.kind == ValueKind::mapping;
        bool const is_list = form.kind == ValueKind::list;
        if (is_mapping ? node.is_mapping() : (is_list ? node.is_sequence() : node.is_scalar()))
            return true;
    }
    return false;
}

inline std::string FieldSearch::help_on(std::size_t stranger, bool may_guess) {
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

inline void FieldSearch::meet_strangers() {
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

inline Node const* FieldSearch::at(std::size_t key, bool is_needed, std::string_view example) {
    Field& field = fields_[key];
    field.is_asked = true;
    if (field.at != none) return &node_.items[field.at];
    if (is_needed && is_mapping() && !field.is_misnamed) missing_.push_back({key, example});
    return nullptr;
}

inline Span FieldSearch::place_of(std::size_t key) const {
    std::size_t const at = fields_[key].at;
    return at == none ? where() : node_.keys[at].where;
}

/// What is written last in a node begins here.
inline Span last_place(Node const& node) {
    return node.items.empty() ? node.where : last_place(node.items.back());
}

/// A misspelt key is one error: whether its value is one of the key that was meant is not judged.
inline void FieldSearch::spare_misnamed() {
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

inline void FieldSearch::close() {
    spare_misnamed();
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        Field const& field = fields_[i];
        if (field.is_asked || field.at == none || field.is_misnamed) continue;
        KeyShape const& key = shape_.keys[i];
        std::string help = fmt::format("{} may have: {}", shape_.complaint, list_of_keys());
        for (Condition const& condition : key.conditions)
            if (condition.kind == Condition::Kind::with &&
                fields_[shape_.find(condition.other)].at == none)
                help = fmt::format("it goes with '{}'", condition.other);
        found_.error(place_of(i), "unknown-key",
                     fmt::format("unknown key '{}'", shortened(key.name, 48)), std::move(help));
    }
    for (Missing const& each : missing_)
        found_.error(
            where(), "missing-key",
            fmt::format("'{}' is missing from {}", shape_.keys[each.key].name, shape_.complaint),
            fmt::format("add '{}: {}'", shape_.keys[each.key].name, each.example));
}

inline bool is_told_by(Node const& node, std::string_view key, std::string_view other_key) {
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
