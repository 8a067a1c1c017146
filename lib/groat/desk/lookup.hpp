/// Things of the books by their names, as a person writes them. A name that is not there is refused with the nearest
/// one, or with those that there are. Where it may be the name of something in doubt, what was found says why
/// (see answer.hpp).
#pragma once

#include <groat/desk/answer.hpp>
#include <groat/model/book.hpp>

#include <fmt/format.h>

#include <algorithm>
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

// ---------------------------------------------------------------------------------------------------

namespace lookup_detail {

/// A few of the names that there are, a line each.
inline std::string list_of(std::vector<std::string> const& names) {
    constexpr std::size_t most = 12;
    std::string text = "there are:";
    for (std::size_t i = 0; i < names.size() && i < most; ++i)
        text += "\n    " + printable(names[i]);
    return text;
}

template <class Index, class Things>
Result<std::vector<std::size_t>> find_all(std::string_view what, BookPart part, Book const& book,
                                          Index const& index, Things const& things,
                                          std::vector<std::string> const& names) {
    std::vector<std::size_t> found;
    for (std::string const& name : names) {
        auto const place = index.find(name);
        if (place == index.end()) return nothing_called(what, name, names_of(things), book, {part});
        found.push_back(place->second);
    }
    return found;
}

} // namespace lookup_detail

inline Refused nothing_called(std::string_view what, std::string const& name,
                              std::vector<std::string> const& names, Book const& book,
                              std::initializer_list<BookPart> parts) {
    if (std::any_of(parts.begin(), parts.end(),
                    [&](BookPart part) { return book.doubts.may_be(part, name); }))
        return as_found();
    std::string help;
    if (auto const near = nearest_name(name, names))
        help = fmt::format("did you mean '{}'?", printable(*near));
    else if (!names.empty())
        help = lookup_detail::list_of(names);
    return refuse({}, fmt::format("no {} is called '{}'", what, shortened(name, 60)), help);
}

inline std::vector<std::string> ids_of(std::vector<Order> const& orders) {
    std::vector<std::string> ids;
    for (Order const& each : orders) ids.push_back(each.id);
    return ids;
}

inline Result<std::vector<std::size_t>> find_ingredients(Book const& book,
                                                         std::vector<std::string> const& names) {
    return lookup_detail::find_all("ingredient", BookPart::ingredients, book, book.ingredient_index,
                                   book.ingredients, names);
}

inline Result<std::vector<std::size_t>> find_formulas(Book const& book,
                                                      std::vector<std::string> const& names) {
    return lookup_detail::find_all("formula", BookPart::formulas, book, book.formula_index,
                                   book.formulas, names);
}

inline Result<Item> find_item(Book const& book, std::string const& name,
                              std::string const& sale_unit) {
    auto const found = find_formulas(book, {name});
    if (!found) return Refused(found.error());
    Formula const& formula = book.formulas[found->front()];
    std::size_t const way = formula.usual_way();
    if (sale_unit.empty())
        return Item{found->front(), way == unresolved ? nullptr : &formula.sold_as[way]};
    for (SaleUnit const& each : formula.sold_as)
        if (each.name == sale_unit) return Item{found->front(), &each};
    std::vector<std::string> const ways = names_of(formula.sold_as);
    std::string help;
    if (auto const near = nearest_name(sale_unit, ways))
        help = fmt::format("did you mean '{}'?", printable(*near));
    else if (!ways.empty())
        help =
            fmt::format("it is sold as: {}", printable(fmt::format("{}", fmt::join(ways, ", "))));
    return refuse("unknown-sale-unit",
                  fmt::format("'{}' is not sold as '{}'", formula.name, shortened(sale_unit, 60)),
                  help);
}

inline Result<Order const*> find_order(Book const& book, std::string const& id) {
    if (Order const* const found = book.find_order(id)) return found;
    return nothing_called("order", id, ids_of(book.orders), book, {BookPart::orders});
}

inline Result<std::vector<Order const*>> find_orders(Book const& book,
                                                     std::vector<std::string> const& ids) {
    std::vector<Order const*> orders;
    for (std::string const& id : ids) {
        auto const found = find_order(book, id);
        if (!found) return Refused(found.error());
        if (std::find(orders.begin(), orders.end(), *found) != orders.end())
            return refuse({}, fmt::format("order '{}' is named twice", printable(id)),
                          "name each order once; more of an item is another 'count' in its file");
        orders.push_back(*found);
    }
    return orders;
}

inline Result<Menu const*> find_menu(Book const& book, std::string const& name) {
    if (Menu const* const found = book.find_menu(name)) return found;
    return nothing_called("menu", name, names_of(book.menus), book, {BookPart::menus});
}

} // namespace groat::desk
