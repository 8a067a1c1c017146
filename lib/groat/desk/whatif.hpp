/// What if, as it is asked for by name: what is looked at (an order, a menu or an item), and the sheet of each way to look
/// at it: with changes made, how dear an ingredient may become, what it cost in time, what moves it most.
#pragma once

#include <groat/paper/sheet.hpp>
#include <groat/trial/whatif.hpp>

#include <optional>
#include <string>
#include <vector>

namespace groat::desk {

/// What is looked at.
struct Subject {
    Calculation calculation;
    std::string words;             ///< for a title
    std::optional<Date> date = {}; ///< the one that an order is priced on
    bool is_of_many_lines = false; ///< an order whose lines share what is done once
};

/// An order by its id, else a menu by its name, else a formula, as it is sold in the way named or the first one.
/// Fails    where nothing of the books is called so, or the formula is not sold so; also where an order or a menu of
///          that name is in doubt: a formula of the same name is not taken in its place
[[nodiscard]] Result<Subject> subject_called(Book const& book, std::string const& name,
                                             std::string const& sale_unit = {});

/// Changes in words, such as 'butter +20 %', to be tried at the prices of `costing`. What is wrong with one is added to
/// `flaws`.
[[nodiscard]] std::vector<Change> changes_said(std::vector<std::string> const& texts,
                                               Costing const& costing, std::vector<Flaw>& flaws);

/// The subject with changes made, those said and those that the books keep under the name of a scenario, all together.
/// Prices are those of the day of `costing`.
/// Fails    where there is no such scenario, one of its changes cannot be made, or the subject cannot be calculated
[[nodiscard]] Result<Sheet> changed_sheet(Costing const& costing, Subject const& subject,
                                          std::vector<Change> changes, std::string const& scenario,
                                          Diagnostics& found);

/// How dear an ingredient may become before the subject misses its target.
/// Fails    where there is no such ingredient, it has no price, or the subject is an order of several lines
[[nodiscard]] Result<Sheet> limit_sheet(Costing const& costing, Subject const& subject,
                                        std::string const& ingredient, Diagnostics& found);

/// What the subject cost from one day to another, at each change of a price list; the days in any order.
/// Fails    where it cannot be calculated on one of the days
[[nodiscard]] Result<Sheet> between_sheet(LinkedBook const& linked, Subject const& subject,
                                          Date one, Date another, Diagnostics& found);

/// What moves the cost of the subject most.
/// Fails    where it cannot be calculated
[[nodiscard]] Result<Sheet> movers_sheet(Costing const& costing, Subject const& subject,
                                         Diagnostics& found);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/whatif.ipp>
#endif
