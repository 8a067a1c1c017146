/// What of the books is in doubt: where an error stands, or where something could not be read at all. An error
/// holds up what uses the thing it stands in, and nothing else (see sound_part.hpp).
#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <iterator>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace groat {

/// The parts of the books that can be in doubt by themselves. The words of the sheets belong to the shop,
/// supplies to the ingredients.
enum class BookPart {
    shop,
    ingredients,
    prices,
    formulas,
    orders,
    stock,
    scenarios,
    yields,
    runs,
    menus
};
inline constexpr std::size_t part_count = 10;

/// Names of things in doubt, by the part of the books that they belong to.
class Doubts {
public:
    /// Something in this part; without a name, something that nobody can name.
    void add(BookPart part, std::string name = {}) { of(part).insert(std::move(name)); }

    /// Whether anything in this part is in doubt.
    [[nodiscard]] bool any(BookPart part) const { return !of(part).empty(); }
    /// Whether the thing of this name is.
    [[nodiscard]] bool names(BookPart part, std::string_view name) const {
        return of(part).find(name) != of(part).end();
    }
    /// Whether a thing that is not there may be one of those in doubt: it is named, or something cannot be.
    [[nodiscard]] bool may_be(BookPart part, std::string_view name) const {
        return names(part, name) || names(part, {});
    }

private:
    using Names = std::set<std::string, std::less<>>;
    [[nodiscard]] Names& of(BookPart part) { return names_[static_cast<std::size_t>(part)]; }
    [[nodiscard]] Names const& of(BookPart part) const {
        return names_[static_cast<std::size_t>(part)];
    }
    std::array<Names, part_count> names_ = {};
};

} // namespace groat
