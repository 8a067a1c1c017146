/// What to ask of whoever buys: from whom, where that is open and costs hang on it; and about a price paid that is
/// far from the one before.
#pragma once

#include <groat/cost/engine.hpp>

namespace groat {

/// By how much a price per usable unit may differ from the one paid before without being asked about.
inline Number const usual_price_move = Number(1) / 4;

/// One warning for all things that several suppliers offer to be bought, of whom none is preferred and from none of
/// whom it was bought by the day: they are costed at the cheapest, whoever that is. And one for each thing whose last
/// price paid is more than a quarter above or below that of the day of purchases before, per usable unit.
[[nodiscard]] Diagnostics buying_findings(Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/plan/buying_findings.ipp>
#endif
