/// What `check` looks at once the books are read: everything that can be told of them without an order being asked for.
/// There is one list of it, `looks`, and nothing is looked at that does not stand there.
#pragma once

#include <groat/cost/engine.hpp>
#include <groat/desk/day.hpp>
#include <groat/paper/sheet.hpp>

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace groat::desk {

/// Looks through books that were read without errors, on the day said or today; orders on their own days where none is
/// said. What is wrong or odd is added to `found`, nothing is changed.
/// Example  an order with an item of which the flour has no price  ->  an error at the flour
void check(LinkedBook const& linked, Dates const& dates, Diagnostics& found);

/// The same at the prices of the day of `costing`, orders too.
void check(Costing const& costing, Diagnostics& found);

/// What the books hold so many of.
struct BookCount {
    std::string_view key;
    std::string_view label;
    std::size_t count;
    std::string_view one;
    std::string_view many;
};

/// Ingredients, suppliers, offers, formulas and orders always; what most books are without, where there is any.
[[nodiscard]] std::vector<BookCount> counts_of(Book const& book);

/// "3 suppliers, 1 offer", as many as there are.
/// Example  a book with nothing in it  ->  "0 ingredients and supplies, 0 suppliers, 0 offers, 0 formulas, 0 orders"
[[nodiscard]] std::string counts_in_words(Book const& book);

/// "1 offer", "2 offers".
[[nodiscard]] std::string counted(std::size_t count, std::string_view one, std::string_view many);

/// A line for each code whose findings the shop accepts, with how many there were and why.
/// Example  "1 finding accepted: loss-not-as-seen (new oven in January)"
[[nodiscard]] std::string accepted_in_words(Diagnostics const& found);

/// What the books hold, and how much was found.
/// Example  "3 suppliers, 12 offers: no errors, 1 warning"
[[nodiscard]] std::string summary_in_words(Book const& book, Diagnostics const& found);

/// The counts, and each finding with its place, as a sheet for programs.
[[nodiscard]] Sheet check_sheet(Book const& book, Diagnostics const& found, Sources const& sources);

/// Books as `check` looks at them: costed once for each day.
class CheckedBook {
public:
    CheckedBook(LinkedBook linked, Dates const& dates)
        : linked_(std::move(linked)), dates_(dates) {}

    /// The same, on one day for all, of which they are costed already.
    explicit CheckedBook(Costing const& costing)
        : linked_(costing.linked()), dates_{costing.date(), costing.date()} {
        costings_.try_emplace(costing.date(), costing);
    }

    [[nodiscard]] Book const& book() const& { return linked_.book(); }
    [[nodiscard]] Dates const& dates() const { return dates_; }
    /// The books at the prices of a day; without one, of the day that counts for them.
    [[nodiscard]] Costing const& costing() { return costing(day_of(dates_)); }
    [[nodiscard]] Costing const& costing(Date date) {
        return costings_.try_emplace(date, linked_, date).first->second;
    }

private:
    LinkedBook linked_;
    Dates dates_;
    std::map<Date, Costing> costings_;
};

/// One thing that `check` looks at.
struct Look {
    std::string_view at;
    void (*look)(CheckedBook& books, Diagnostics& found);
};

/// All that `check` looks at, in its order.
[[nodiscard]] std::span<Look const> looks();

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/check.ipp>
#endif
