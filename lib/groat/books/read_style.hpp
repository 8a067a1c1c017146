/// `language`, `money` and `dates` of `sheets:` in shop.yaml.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/books/shape_shop.hpp>

namespace groat {

/// Reads its fields from those of `sheets:`. The words of words.yaml are the shop's where there are any.
void read_style(Fields<shapes::sheets>& fields, SheetRule& rule, Reading const& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_style.ipp>
#endif
