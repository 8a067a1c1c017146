/// A name that stands for something else in the books, and where it was written.
#pragma once

#include <groat/base/source.hpp>

#include <cstddef>
#include <string>

namespace groat {

inline constexpr std::size_t unresolved = static_cast<std::size_t>(-1);

/// `index` is `unresolved` until `link` (see book.hpp) has found the thing named, once for the whole book.
struct Reference {
    std::string name;
    Span origin;
    std::size_t index = unresolved;

    [[nodiscard]] bool is_given() const { return !name.empty(); }
    [[nodiscard]] bool is_resolved() const { return index != unresolved; }
};

} // namespace groat
