/// What yield tests are of, and the yields that cite them. Part of `link` (link.hpp), which knows all that can be
/// named.
#pragma once

#include <groat/model/book.hpp>
#include <groat/model/suggest.hpp>

namespace groat {

/// Weighs the yield tests of a book, and gives what cites them its yield. Its ingredients have been indexed and the
/// items of its offers resolved. Reports tests of nothing that is known, and citations of what is not there; the
/// test, ingredient or offer is in doubt then.
void link_yields(Book& book, Suggest const& suggest, Diagnostics& found);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/yield_links.ipp>
#endif
