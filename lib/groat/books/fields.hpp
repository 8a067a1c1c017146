/// A mapping as a list of fields: its reader asks for each key it knows, and whatever nobody asked for is
/// an error, so that a misspelt key never passes for one that was left out.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/base/name.hpp>
#include <groat/yaml/node.hpp>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// Reports that something else was expected at a node.
/// Example  `expected("a list", node, found, "- one")`  ->  "a list is expected here, not a mapping"
inline void expected(std::string_view what, Node const& node, Diagnostics& found,
                     std::string help = {});

/// The keys and values of one mapping while it is being read.
///
///     Fields fields(node, "this offer", found);
///     Node const* item = fields.required("item", "plain flour");
///     Node const* code = fields.optional("code");
///     fields.close();
///
/// `name` words the complaints. A node that is no mapping is reported once; it then has no fields, and
/// none is missed.
class Fields {
public:
    Fields(Node const& node, std::string name, Diagnostics& found);

    /// The value of `key`, or null where it is absent.
    [[nodiscard]] Node const* optional(std::string_view key);
    /// The same, and reports a key that is absent, unless a misspelt one stands in its place; `example` is a
    /// value to type. Both outlive the fields.
    [[nodiscard]] Node const* required(std::string_view key, std::string_view example);

    /// The place of a key; that of the mapping where it is absent.
    [[nodiscard]] Span place_of(std::string_view key) const;
    [[nodiscard]] Span where() const { return node_.where; }
    [[nodiscard]] bool is_mapping() const { return node_.is_mapping(); }
    [[nodiscard]] std::string const& name() const { return name_; }

    /// Reports every key that was not asked for, with the nearest that was, and what is missing. To be called
    /// last.
    void close();

private:
    Node const* find(std::string_view key);
    Node const& node_;
    std::string name_;
    Diagnostics& found_;
    std::vector<std::string_view> asked_;
    std::vector<bool> is_used_;
    struct Missing {
        std::string_view key;
        std::string_view example;
    };
    std::vector<Missing> missing_;
};

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

inline Fields::Fields(Node const& node, std::string name, Diagnostics& found)
    : node_(node), name_(std::move(name)), found_(found), is_used_(node.keys.size(), false) {
    if (!node.is_mapping())
        expected(fmt::format("a mapping for {}", name_), node, found,
                 "write it as 'key: value', or {key: value}");
}

inline Node const* Fields::find(std::string_view key) {
    asked_.push_back(key);
    for (std::size_t i = 0; i < node_.keys.size(); ++i) {
        if (node_.keys[i].text != key) continue;
        is_used_[i] = true;
        return &node_.items[i];
    }
    return nullptr;
}

inline Node const* Fields::optional(std::string_view key) { return find(key); }

inline Node const* Fields::required(std::string_view key, std::string_view example) {
    Node const* const value = find(key);
    if (value == nullptr && is_mapping()) missing_.push_back({key, example});
    return value;
}

inline Span Fields::place_of(std::string_view key) const {
    for (Key const& each : node_.keys)
        if (each.text == key) return each.where;
    return where();
}

inline void Fields::close() {
    // Suggestions cost time: a mapping of very many unknown keys is not a slip of the finger.
    std::size_t suggestions = 100;
    for (std::size_t i = 0; i < node_.keys.size(); ++i) {
        if (is_used_[i]) continue;
        Key const& key = node_.keys[i];
        std::string help;
        if (suggestions > 0) {
            --suggestions;
            if (auto const near = nearest_name(key.text, asked_)) {
                help = fmt::format("did you mean '{}'?", *near);
                std::erase_if(missing_, [&](Missing const& each) { return each.key == *near; });
            } else if (node_.items[i].is_null())
                help =
                    "a comma divides keys here: put text that contains one into quotation marks, and "
                    "write decimals with a point";
            else
                help = fmt::format("{} may have: {}", name_, fmt::join(asked_, ", "));
        }
        found_.error(key.where, "unknown-key",
                     fmt::format("unknown key '{}'", shortened(key.text, 48)), std::move(help));
    }
    for (Missing const& each : missing_)
        found_.error(where(), "missing-key",
                     fmt::format("'{}' is missing from {}", each.key, name_),
                     fmt::format("add '{}: {}'", each.key, each.example));
}

} // namespace groat
