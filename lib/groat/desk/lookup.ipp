#pragma once

#include <groat/desk/lookup.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/desk/answer.hpp>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace groat::desk {

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

GROAT_INLINE Refused nothing_called(std::string_view what, std::string const& name,
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

GROAT_INLINE std::vector<std::string> ids_of(std::vector<Order> const& orders) {
    std::vector<std::string> ids;
    for (Order const& each : orders) ids.push_back(each.id);
    return ids;
}

GROAT_INLINE Result<std::vector<std::size_t>> find_ingredients(
    Book const& book, std::vector<std::string> const& names) {
    return lookup_detail::find_all("ingredient", BookPart::ingredients, book, book.ingredient_index,
                                   book.ingredients, names);
}

GROAT_INLINE Result<std::vector<std::size_t>> find_formulas(Book const& book,
                                                            std::vector<std::string> const& names) {
    return lookup_detail::find_all("formula", BookPart::formulas, book, book.formula_index,
                                   book.formulas, names);
}

GROAT_INLINE Result<Item> find_item(Book const& book, std::string const& name,
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

GROAT_INLINE Result<Order const*> find_order(Book const& book, std::string const& id) {
    if (Order const* const found = book.find_order(id)) return found;
    return nothing_called("order", id, ids_of(book.orders), book, {BookPart::orders});
}

GROAT_INLINE Result<std::vector<Order const*>> find_orders(Book const& book,
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

GROAT_INLINE Result<Menu const*> find_menu(Book const& book, std::string const& name) {
    if (Menu const* const found = book.find_menu(name)) return found;
    return nothing_called("menu", name, names_of(book.menus), book, {BookPart::menus});
}

} // namespace groat::desk
