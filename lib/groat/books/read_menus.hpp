/// menus/*.yaml: what is offered at set prices, what these are to reach, and what was sold.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/menu.hpp>

namespace groat {

/// The menu of a document; without a name where the document gives none.
[[nodiscard]] Menu read_menu(Node const& node, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_menus.ipp>
#endif
