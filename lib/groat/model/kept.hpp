/// What a result points to and does not own itself, alive as long as the result or a copy of it: the book, and
/// copies of the orders and menus that it was asked for. A part that is copied out of a result points into what the
/// result keeps, so it is good while the result is.
#pragma once

#include <groat/model/linked_book.hpp>

#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace groat {

class Kept {
public:
    Kept() = default;
    explicit Kept(LinkedBook book) : book_(std::move(book)) {}

    /// A copy of `thing` that is kept, for the result to point to.
    template <class Thing> [[nodiscard]] Thing const* copy_of(Thing const& thing) {
        auto copy = std::make_shared<Thing const>(thing);
        copies_.push_back(copy);
        return copy.get();
    }
    /// The same of each.
    template <class Thing>
    [[nodiscard]] std::vector<Thing const*> copies_of(std::vector<Thing const*> const& things) {
        std::vector<Thing const*> copies;
        for (Thing const* const thing : things) copies.push_back(copy_of(*thing));
        return copies;
    }

private:
    std::optional<LinkedBook> book_ = {};
    std::vector<std::shared_ptr<void const>> copies_ = {};
};

} // namespace groat
