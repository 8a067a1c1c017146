/// Things of the books by their names, as a person writes them. A name that is not there is refused with the nearest
/// one, or with those that there are. Where it may be the name of something in doubt, what was found says why
/// (see answer.hpp).
#pragma once

#include <groat/model/book.hpp>

#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace groat::desk {

/// A formula, and how it is sold; null where it is not sold in any way.
struct Item {
    std::size_t formula = 0;
    SaleUnit const* unit = nullptr;
};

/// Ingredients and supplies as indices in the book, in the order named.
/// Fails    at the first name that the books do not have
[[nodiscard]] Result<std::vector<std::size_t>> find_ingredients(
    Book const& book, std::vector<std::string> const& names);

/// Formulas likewise.
[[nodiscard]] Result<std::vector<std::size_t>> find_formulas(Book const& book,
                                                             std::vector<std::string> const& names);

/// A formula as it is sold in the way named; without one, in the first way listed.
/// Fails    where there is no such formula, or it is not sold so
[[nodiscard]] Result<Item> find_item(Book const& book, std::string const& name,
                                     std::string const& sale_unit = {});

/// The order called `id`.
/// Fails    where there is none
/// Example  "2026-014", where there is 2026-041  ->  "no order is called '2026-014'", "did you mean '2026-041'?"
[[nodiscard]] Result<Order const*> find_order(Book const& book, std::string const& id);

/// The orders called so.
/// Fails    at the first that there is not, and at one that is named again
[[nodiscard]] Result<std::vector<Order const*>> find_orders(Book const& book,
                                                            std::vector<std::string> const& ids);

/// The menu called `name`.
/// Fails    where there is none
[[nodiscard]] Result<Menu const*> find_menu(Book const& book, std::string const& name);

/// The refusal of a name: "no WHAT is called 'x'". `names` are those that there are, `parts` are the parts of the
/// books that such a thing could be in doubt in.
/// Example  "vanila extract" among the ingredients  ->  "did you mean 'vanilla extract'?"
[[nodiscard]] Refused nothing_called(std::string_view what, std::string const& name,
                                     std::vector<std::string> const& names, Book const& book,
                                     std::initializer_list<BookPart> parts);

/// The ids of all orders.
[[nodiscard]] std::vector<std::string> ids_of(std::vector<Order> const& orders);

} // namespace groat::desk

#ifndef GROAT_COMPILED
#include <groat/desk/lookup.ipp>
#endif
