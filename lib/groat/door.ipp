#pragma once

#include <groat.hpp>

#include <groat/base/linkage.hpp>
#include <groat/base/name.hpp>
#include <groat/base/text.hpp>
#include <groat/desk/check.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace groat {

namespace front_door {

/// Says that nothing is called `name`, or that what is called so is in doubt.
template <class Names>
void unknown(Book const& book, BookPart part, Code code, std::string_view what,
             std::string_view name, Names const& names, Diagnostics& found) {
    std::string const shown = shortened(name, 60);
    if (book.doubts.may_be(part, name))
        found.error({}, code,
                    fmt::format("the {} '{}' cannot be used: an error stands in it, or in what it "
                                "takes",
                                what, shown),
                    "mend the errors of the books first");
    else
        found.error({}, code, fmt::format("no {} is called '{}'", what, shown),
                    did_you_mean(name, names, "names are matched letter by letter"));
}

inline Order const* order_of(Book const& book, std::string_view id, Diagnostics& found) {
    Order const* const order = book.find_order(id);
    if (order != nullptr) return order;
    std::vector<std::string> ids;
    for (Order const& each : book.orders) ids.push_back(each.id);
    unknown(book, BookPart::orders, "unknown-order", "order", id, ids, found);
    return nullptr;
}

/// Nothing where one is unknown, or none is named. One that is named twice counts once.
inline std::vector<Order const*> orders_of(Book const& book, std::vector<std::string> const& ids,
                                           Diagnostics& found) {
    std::vector<Order const*> orders;
    bool are_all_known = true;
    for (std::string const& id : ids) {
        Order const* const order = order_of(book, id, found);
        are_all_known = are_all_known && order != nullptr;
        if (std::find(orders.begin(), orders.end(), order) == orders.end()) orders.push_back(order);
    }
    if (ids.empty())
        found.error({}, "no-orders", "no order is named", "name one of the orders of the books");
    return are_all_known ? orders : std::vector<Order const*>();
}

} // namespace front_door

GROAT_INLINE Diagnostics check(Costing const& costing) {
    Diagnostics found;
    desk::check(costing, found);
    return found;
}

GROAT_INLINE std::optional<ItemCost> cost(Costing const& costing, std::string_view item,
                                          std::string_view sold_as, Diagnostics& found) {
    Book const& book = costing.book();
    auto const known = book.formula_index.find(item);
    if (known == book.formula_index.end()) {
        front_door::unknown(book, BookPart::formulas, "unknown-formula", "formula", item,
                            names_of(book.formulas), found);
        return std::nullopt;
    }
    if (sold_as.empty()) return cost_item(costing, known->second, nullptr, found);
    auto const& ways = book.formulas[known->second].sold_as;
    for (SaleUnit const& unit : ways)
        if (unit.name == sold_as) return cost_item(costing, known->second, &unit, found);
    found.error(book.formulas[known->second].origin, "unknown-sale-unit",
                fmt::format("'{}' is not sold as '{}'", item, shortened(sold_as, 60)),
                did_you_mean(sold_as, names_of(ways)));
    return std::nullopt;
}

GROAT_INLINE std::optional<Quote> quote(Costing const& costing, std::string_view order,
                                        Diagnostics& found) {
    Order const* const known = front_door::order_of(costing.book(), order, found);
    return known == nullptr ? std::nullopt : quote(costing, *known, found);
}

GROAT_INLINE std::optional<Comparison> compare(Costing const& costing, std::string_view ingredient,
                                               Diagnostics& found) {
    Book const& book = costing.book();
    auto const known = book.ingredient_index.find(ingredient);
    if (known == book.ingredient_index.end()) {
        front_door::unknown(book, BookPart::ingredients, "unknown-ingredient", "ingredient",
                            ingredient, names_of(book.ingredients), found);
        return std::nullopt;
    }
    auto comparison = compare_offers(book, known->second, costing.date(), std::nullopt);
    if (comparison) return *std::move(comparison);
    found.error(book.ingredients[known->second].origin, comparison.error());
    return std::nullopt;
}

GROAT_INLINE std::optional<MenuCost> menu(Costing const& costing, std::string_view name,
                                          Diagnostics& found) {
    Book const& book = costing.book();
    Menu const* const known = book.find_menu(name);
    if (known != nullptr) return cost_menu(costing, *known, found);
    front_door::unknown(book, BookPart::menus, "unknown-menu", "menu", name, names_of(book.menus),
                        found);
    return std::nullopt;
}

GROAT_INLINE std::optional<Buying> buy(Costing const& costing,
                                       std::vector<std::string> const& orders, Diagnostics& found) {
    auto const known = front_door::orders_of(costing.book(), orders, found);
    return known.empty() ? std::nullopt : buy(costing, known, found);
}

GROAT_INLINE std::optional<Buying> buy(Costing const& costing,
                                       std::initializer_list<std::string_view> orders,
                                       Diagnostics& found) {
    return buy(costing, std::vector<std::string>(orders.begin(), orders.end()), found);
}

GROAT_INLINE std::optional<Production> make(Costing const& costing,
                                            std::vector<std::string> const& orders,
                                            Diagnostics& found) {
    auto const known = front_door::orders_of(costing.book(), orders, found);
    return known.empty() ? std::nullopt : produce(costing, known, found);
}

GROAT_INLINE Sheet sheet_of(ItemCost const& cost, Costing const& costing) {
    return cost_sheet(cost, costing);
}
GROAT_INLINE Sheet sheet_of(Quote const& quote, Costing const& costing) {
    return maker_quote_sheet(quote, costing);
}
GROAT_INLINE Sheet sheet_for_client(Quote const& quote, Costing const& costing) {
    return client_quote_sheet(quote_for_client(quote, costing.book()), costing.book().shop);
}
GROAT_INLINE Sheet sheet_of(Comparison const& comparison, Costing const& costing) {
    return compare_sheet({comparison}, costing.book(), costing.date());
}
GROAT_INLINE Sheet sheet_of(MenuCost const& menu, Costing const& costing) {
    return menu_sheet(menu, costing);
}
GROAT_INLINE Sheet sheet_of(Buying const& buying, Costing const& costing) {
    return buy_sheet(buying, costing.book(), buying_days(costing, buying),
                     costed_and_paid(costing, buying));
}
GROAT_INLINE Sheet sheet_of(Production const& plan, Costing const& costing) {
    return make_sheet(plan, costing);
}

} // namespace groat
