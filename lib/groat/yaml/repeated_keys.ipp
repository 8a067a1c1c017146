#pragma once

#include <groat/yaml/repeated_keys.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <vector>

namespace groat {

GROAT_INLINE void drop_repeated_keys(Node& node, Diagnostics& found) {
    std::vector<std::size_t> order(node.keys.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return node.keys[a].text < node.keys[b].text;
    });
    std::vector<bool> is_repeated(order.size(), false);
    std::size_t repeated = 0;
    std::size_t first = 0;
    for (std::size_t i = 1; i < order.size(); ++i) {
        Key const& key = node.keys[order[i]];
        Key const& before = node.keys[order[first]];
        if (key.text != before.text) {
            first = i;
            continue;
        }
        is_repeated[order[i]] = true;
        node.items[order[first]].is_in_doubt = true;
        if (++repeated > most_reported) continue;
        found.add({Severity::error,
                   "duplicate-key",
                   fmt::format("'{}' stands twice", shortened(key.text, 48)),
                   key.where,
                   {{"first written here", before.where}},
                   "remove one; where a name may stand twice, write a list"});
    }
    if (repeated == 0) return;
    node.is_in_doubt = true;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < is_repeated.size(); ++i) {
        if (is_repeated[i]) continue;
        if (kept != i) {
            node.keys[kept] = std::move(node.keys[i]);
            node.items[kept] = std::move(node.items[i]);
        }
        ++kept;
    }
    node.keys.resize(kept);
    node.items.resize(kept);
}

} // namespace groat
