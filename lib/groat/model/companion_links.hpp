/// Orders that are made together. Part of `link` (link.hpp), which knows all that can be named.
#pragma once

#include <groat/model/book.hpp>
#include <groat/model/suggest.hpp>

namespace groat {

/// Finds the orders that others are made with, and for each order all that belong to its set: whoever is named by
/// one of them belongs to all. An order that names one that is not there, or itself, is in doubt.
void link_companions(Book& book, Suggest const& suggest, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/companion_links.ipp>
#endif
