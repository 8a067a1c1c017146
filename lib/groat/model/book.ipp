#pragma once

#include <groat/model/book.hpp>

#include <groat/base/linkage.hpp>

namespace groat {

GROAT_INLINE Book::Book() = default;
GROAT_INLINE Book::Book(Book const&) = default;
GROAT_INLINE Book::Book(Book&&) noexcept = default;
GROAT_INLINE Book& Book::operator=(Book const&) = default;
GROAT_INLINE Book& Book::operator=(Book&&) noexcept = default;
GROAT_INLINE Book::~Book() = default;

GROAT_INLINE Formula const* Book::find_formula(std::string_view name) const {
    auto const found = formula_index.find(name);
    return found == formula_index.end() ? nullptr : &formulas[found->second];
}

GROAT_INLINE Order const* Book::find_order(std::string_view id) const {
    for (Order const& order : orders)
        if (order.id == id) return &order;
    return nullptr;
}

GROAT_INLINE Menu const* Book::find_menu(std::string_view name) const {
    for (Menu const& menu : menus)
        if (menu.name == name) return &menu;
    return nullptr;
}

} // namespace groat
