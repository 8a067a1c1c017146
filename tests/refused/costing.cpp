// Only a book that was linked without errors can be costed, and nothing is asked of a costing or book that dies at once.
#include <groat/cost/engine.hpp>
#include <groat/model/link.hpp>

#include <optional>
#include <utility>

using groat::Book;
using groat::Costing;
using groat::CostRequest;
using groat::Date;
using groat::Diagnostics;
using groat::LinkedBook;
using groat::OrderCost;

std::optional<OrderCost> cost_of(Book book, Date date, CostRequest const& request) {
    Diagnostics found;
    std::optional<LinkedBook> const linked = groat::link(std::move(book), found);
    if (!linked) return std::nullopt;
    return Costing(*linked, date).cost(request); // it keeps what it points to
}

#if CASE == 1
// refused: no matching function
// refused: no matching constructor
Costing costing_of(Book const& book, Date date) { return Costing(book, date); }
#elif CASE == 2
// refused: no matching function
// refused: no matching constructor
Costing costing_of_one_that_dies(Date date) { return Costing(Book(), date); }
#elif CASE == 3
// refused: is private within this context
// refused: calling a private constructor
LinkedBook never_linked() { return LinkedBook(Book()); }
#elif CASE == 4
// refused: no matching function
// refused: no matching constructor
Costing costing_of_what_may_not_be(Book book, Date date, Diagnostics& found) {
    return Costing(groat::link(std::move(book), found), date);
}
#elif CASE == 5
// refused: use of deleted function
// refused: call to deleted member function
Book const& book_of_a_costing_that_dies(LinkedBook const& book, Date date) {
    return Costing(book, date).book();
}
#elif CASE == 6
// refused: use of deleted function
// refused: call to deleted member function
Book const& book_that_dies(Book book, Diagnostics& found) {
    return groat::link(std::move(book), found).value().book();
}
#elif CASE == 7
// refused: use of deleted function
// refused: call to deleted member function
groat::Formulary const& formulary_that_dies(LinkedBook const& book, Date date) {
    return Costing(book, date).formulary();
}
#elif CASE == 8
// refused: discards qualifiers
// refused: drops 'const' qualifier
// refused: cannot assign to
void changed_after_it_was_linked(LinkedBook const& book) {
    Book& changed = book.book();
    changed.offers.clear();
}
#endif
