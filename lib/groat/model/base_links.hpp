/// By what each food is costed. Mass is the rule, since formulas are weighed; but nothing is asked for that the
/// arithmetic does not need: what is only ever bought by the piece, or only by volume, is costed so until the
/// books say what one, or a cup, weighs.
#pragma once

#include <groat/model/book.hpp>

namespace groat {

/// By what a food is costed whose packs are all of one dimension.
[[nodiscard]] Dimension base_of(Ingredient const& food, Dimension packs);

/// Sets it for each ingredient, by all its packs: offered and bought, in force or not. What a yield test weighs is
/// costed by mass. The names are resolved.
void link_bases(Book& book);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/model/base_links.ipp>
#endif
