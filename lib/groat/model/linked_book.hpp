/// A book that may be costed: every name in it is resolved and no error stands in it. There is no other way to one
/// than `link` (link.hpp) and `sound_part` (sound_part.hpp), and nothing changes it any more. Copies share one
/// book, which lives as long as the last of them, or of what was calculated from it.
#pragma once

#include <groat/model/book.hpp>

#include <memory>
#include <optional>
#include <stdexcept>
#include <utility>

namespace groat {

class LinkedBook {
public:
    LinkedBook(LinkedBook const&) = default; // moved is copied: there is no empty one
    LinkedBook& operator=(LinkedBook const&) = default;

    [[nodiscard]] Book const& book() const& { return *book_; }
    /// Refused where the only one that is sure to keep the book alive dies at once.
    Book const& book() const&& = delete;

    /// A copy with other values. `change` takes a `Book&`; it may change what things cost, hold and lose, and what
    /// a resolved name stands for, but puts nothing in and takes nothing out: to do that, change a `Book` and
    /// link it anew.
    /// Throws   `std::logic_error` where a list is longer or shorter afterwards
    template <class Change> [[nodiscard]] LinkedBook with(Change const& change) const;

private:
    explicit LinkedBook(Book book) : book_(std::make_shared<Book const>(std::move(book))) {}
    friend std::optional<LinkedBook> link(Book book, Diagnostics& found);
    friend std::optional<LinkedBook> sound_part(Book&& book);

    std::shared_ptr<Book const> book_;
};

// ---------------------------------------------------------------------------------------------------

template <class Change> LinkedBook LinkedBook::with(Change const& change) const {
    Book changed = *book_;
    change(changed);
    auto const is_as_long = [&](auto Book::*list) {
        return (changed.*list).size() == ((*book_).*list).size();
    };
    if (!is_as_long(&Book::ingredients) || !is_as_long(&Book::suppliers) ||
        !is_as_long(&Book::offers) || !is_as_long(&Book::formulas) || !is_as_long(&Book::orders) ||
        !is_as_long(&Book::yield_tests) || !is_as_long(&Book::runs) || !is_as_long(&Book::menus))
        throw std::logic_error("something was put into a linked book or taken out of it");
    return LinkedBook(std::move(changed));
}

} // namespace groat
