/// What a YAML file says, before anybody asks what it means: text, lists and mappings, each with the place
/// it was written at. Order is kept; nothing is interpreted, so that `no`, `010` and `2026-041` stay the
/// text that a person typed.
#pragma once

#include <groat/base/source.hpp>

#include <cstddef>
#include <string>
#include <vector>

namespace groat {

/// A key of a mapping.
struct Key {
    std::string text;
    Span where;
};

struct Node {
    enum class Kind { null, scalar, sequence, mapping };

    Kind kind = Kind::null;
    Span where = {}; ///< of a list or a mapping, its first character
    /// Of a scalar, without quotation marks. Of null, a note such as `#60 scoop` that hides a value.
    std::string text = {};
    bool is_quoted = false;       ///< with quotation marks, which `where` counts in
    bool is_verbatim = false;     ///< `text` stands in the file on one line, letter by letter
    std::vector<Key> keys = {};   ///< of a mapping, one for each item; no key stands twice
    std::vector<Node> items = {}; ///< of a list or a mapping
    bool is_in_doubt = false;     ///< its key stood twice, or one in it did

    [[nodiscard]] bool is_null() const { return kind == Kind::null; }
    [[nodiscard]] bool is_scalar() const { return kind == Kind::scalar; }
    [[nodiscard]] bool is_sequence() const { return kind == Kind::sequence; }
    [[nodiscard]] bool is_mapping() const { return kind == Kind::mapping; }

    /// The place of `length` bytes of `text` from byte `at` on; where these cannot be told apart in the
    /// file, the place of the whole.
    /// Example  `pack: 3 cupz`, bytes 2 to 5  ->  the word `cupz`
    [[nodiscard]] Span place_of(std::size_t at, std::size_t length) const;
};

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/yaml/node.ipp>
#endif
