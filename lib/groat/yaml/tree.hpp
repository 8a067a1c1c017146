/// Reads a YAML file into nodes: every document of it, every key with its place. This is the one place that
/// knows yaml-cpp, and it uses that library's events, since its node tree is slow and forgets positions.
///
/// What YAML allows and a kitchen does not need is refused rather than guessed at: keys that stand twice,
/// `<<`, tags, keys that are lists, directives. What it drops in silence (an unclosed quotation mark, text
/// behind the end of a document) is an error here. Nesting and the growth by aliases are bounded, so that
/// no file of whatever content can exhaust the stack, the memory or anybody's patience.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/yaml/node.hpp>

#include <vector>

namespace groat {

/// How deep lists and mappings may stand in one another.
inline constexpr std::size_t most_levels = 64;
/// How many values aliases may repeat in one document; what anchors mark counts as well.
inline constexpr std::size_t most_repeated = 100'000;
/// How many values a file may hold.
inline constexpr std::size_t most_values = 2'000'000;

/// The documents of a file, in order; those without content are left out.
struct Tree {
    std::vector<Node> documents = {};
    bool is_cut_off = false; ///< the reading ended before the file did
};

/// Reads a file of `sources`. Whatever is wrong with it as YAML is added to `found`; documents before the first
/// error that ends the reading are returned. A repeated key is reported and its first value kept.
[[nodiscard]] Tree read_tree(Sources const& sources, std::uint32_t file, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/yaml/tree.ipp>
#endif
