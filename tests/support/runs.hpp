/// Runs for the tests: written by hand, or made just as the books say.
#pragma once

#include "random_book.hpp"

#include <groat/cost/engine.hpp>

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <utility>

namespace groat::test {

/// A run of a formula that says nothing yet.
Run& a_run(Book& book, std::string_view name, std::string_view formula,
           std::string_view order = "");

/// A linked run of so much of a formula (grams that go in) that loses just what the books say, save that
/// pieces are rounded down to whole ones and weights follow from the good ones.
Run& by_the_book(Book& book, Costing const& costing, std::size_t formula, Number const& grams);

/// Runs of random formulas for the order of a random book; all that goes in is written down, with prices.
/// Returns what was paid in all.
Money random_runs(Book& book, Draw& draw);

} // namespace groat::test
