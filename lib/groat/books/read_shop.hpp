/// shop.yaml: wages, ovens, energy, overhead, fees, tax, and how the shop quotes.
#pragma once

#include <groat/books/scalars.hpp>
#include <groat/model/shop.hpp>

namespace groat {

/// The shop of a document. The currency and the measures it names are put into `reading` first, since all
/// other amounts, here and in the other files, are read with them.
[[nodiscard]] Shop read_shop(Node const& node, Reading& reading);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/read_shop.ipp>
#endif
