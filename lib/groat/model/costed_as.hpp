/// How an order, or a line of one, is costed.
#pragma once

#include <string_view>

namespace groat {

/// alone          as if nothing else were made that day
/// made_together  with the orders named in it: doughs, loads, preheating and packs are shared. Where none is named
///                that is the same as alone
/// usual_run      as part of a usual day: at what one costs in the standard run of its item
enum class CostedAs { alone, made_together, usual_run };

inline constexpr std::string_view costed_as_words[] = {"alone", "made together", "usual run"};

} // namespace groat
