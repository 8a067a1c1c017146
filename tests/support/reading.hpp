/// What the tests of this layer share: short texts to read, and what was found as something to compare.
#pragma once

#include <groat/yaml/tree.hpp>

#include <fmt/format.h>

#include <deque>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat_test {

/// `line:column+length code` of each finding in the order of the places, joined by blanks: short enough to
/// state where every caret stands and why.
inline std::string marks(groat::Diagnostics const& found) {
    std::string text;
    for (groat::Diagnostic const& each : found.sorted()) {
        if (!text.empty()) text += ' ';
        if (each.where.line > 0)
            text += fmt::format("{}:{}+{} ", each.where.line, each.where.column, each.where.length);
        text += each.code;
    }
    return text;
}

/// Texts that are read as if they were files.
struct Desk {
    groat::Sources sources = {};
    groat::Diagnostics found = {};
    std::deque<std::vector<groat::Node>> trees = {};

    std::vector<groat::Node> const& documents(std::string text, std::string name = "x.yaml") {
        std::uint32_t const file = sources.add(std::move(name), std::move(text));
        return trees.emplace_back(groat::read_tree(sources, file, found).documents);
    }
    /// The first document; a null node where there is none.
    groat::Node const& node(std::string text) {
        static groat::Node const nothing;
        auto const& all = documents(std::move(text));
        return all.empty() ? nothing : all.front();
    }
    /// The value of the only key of `key: value`.
    groat::Node const* value(std::string text) {
        groat::Node const& mapping = node(std::move(text));
        return mapping.items.empty() ? nullptr : &mapping.items.front();
    }

    [[nodiscard]] std::string said() const { return groat::render(found, sources); }
    [[nodiscard]] std::string marked() const { return marks(found); }
};

/// What is found in a text by the tree alone.
inline std::string tree_marks(std::string text) {
    Desk desk;
    (void)desk.documents(std::move(text));
    return desk.marked();
}

/// A text in which `part` stands `count` times.
inline std::string times(std::size_t count, std::string_view part) {
    std::string text;
    text.reserve(count * part.size());
    for (std::size_t i = 0; i < count; ++i) text += part;
    return text;
}

} // namespace groat_test
