/// What is kept is costed at a run of its own. Where that is not how it will be made, what it would cost if it were
/// made for an order alone.
#pragma once

#include <groat/cost/engine.hpp>

namespace groat {

/// Warns where an order takes more of something kept than the run gives that it is costed at.
void warn_of_short_runs(OrderCost const& cost, Order const& order, Costing const& costing,
                        Diagnostics& found);

/// Warns where an order leaves something kept that nobody takes while it is good: no other order of the books that is
/// due within its keeping time, and no menu. One finding for each thing that is kept.
[[nodiscard]] Diagnostics kept_findings(Costing const& costing);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/price/kept_findings.ipp>
#endif
